import type { Sink } from '../changes/sink.ts';
import { explain, type TimeReader, timeReader } from '../clock/time-reader.ts';
import { zoneOf } from '../clock/zones.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import type { Head } from './head.ts';
import type { TextImporter } from './importer.ts';
import { leadingStamp, stampAndWords, unitPlaces } from './leading-stamp.ts';
import type { LineFormat, LineParts } from './line-format.ts';
import { fieldNames, lineFormats, ownFormat } from './line-formats.ts';

/** Fields that say when, where and what; every other one of a line is a parameter. */
const known: ReadonlySet<string> = new Set(Object.values(fieldNames).flat());

/** Text lines: RFC 5424, RFC 3164, JSON, key=value, or a leading timestamp, a unit and a message. */
export const lines: TextImporter = {
  id: 'lines',
  title: 'lines',
  summary: 'text logs: RFC 5424, RFC 3164, key=value, JSON lines, or a time, a unit and a message',
  shape: 'text',
  recognise(head, phrasebook) {
    const format = formatOf(head, phrasebook);
    return format === null
      ? {
          fits: false,
          because: 'no line begins with a timestamp and a unit, nor is RFC 5424, RFC 3164, JSON or key=value',
        }
      : { fits: true, because: `its lines are ${format.title}`, isLast: format === stampAndWords };
  },
  open(head, phrasebook, times) {
    const format = formatOf(head, phrasebook) ?? leadingStamp;
    return (row, sink) => {
      const text = row.text();
      if (text.trim() === '') return sink.ignore();
      const parts = format.take(text, times);
      if (parts === null)
        return sink.reject(
          `The line is not ${format.title}.`,
          'Correct the line, or describe it with files.line in the phrasebook.',
        );
      if ('wrong' in parts)
        return sink.reject(
          parts.wrong,
          'Correct the line, or describe it with files.line in the phrasebook.',
        );
      put(parts, times, sink);
    };
  },
};

function put(parts: LineParts, times: TimeReader, sink: Sink): void {
  const at = typeof parts.stamp === 'number' ? parts.stamp : times.read(parts.stamp);
  if (typeof at !== 'number') {
    const { what, fix } = explain(String(parts.stamp), at);
    sink.reject(what, fix);
    return;
  }
  const { fields, unit, message } = parts;
  const half = fields.get('half') ?? '';
  const role = fields.get('role') ?? '';
  const isPair = fields.get('pair') === unit && unit !== '';
  const address = half === '' && role === '' && !isPair ? undefined : { unit, half, role, isPair };
  if (message !== null) sink.entry(at, unit, message, address);
  if (role !== '') sink.reading(at, unit, 'role', role, address);
  for (const [name, value] of fields)
    if (!known.has(name.toLowerCase())) sink.reading(at, unit, name, value, address);
}

function speaksFor(format: LineFormat, line: string, times: TimeReader): boolean {
  const parts = format.take(line, times);
  // A line that breaks the rules of its format speaks for it all the same.
  return parts !== null && ('wrong' in parts || format.speaks?.(parts) !== false);
}

/**
 * The format that most of the first lines are written in: one that says itself what each part is, or a stamp with a unit in the
 * field in which most lines have one by its form, else in the first, else without one.
 */
function formatOf(head: Head, phrasebook: Phrasebook): LineFormat | null {
  if (head.rule?.line !== undefined) return ownFormat(head.rule.line);
  // The order of day and month is not settled yet: a stamp may be either.
  const orders = ['day-first', 'month-first'] as const;
  const probes = orders.map((order) => timeReader(zoneOf('UTC', ''), order, 2000, phrasebook.pattern));
  const sample = head.lines.slice(0, 20);
  const best = (formats: readonly LineFormat[], least: number): LineFormat | null => {
    const [first] = formats
      .map((format) => ({
        format,
        fits: sample.filter((line) => probes.some((p) => speaksFor(format, line, p))).length,
      }))
      .sort((a, b) => b.fits - a.fits);
    return first !== undefined && first.fits > sample.length * least ? first.format : null;
  };
  return (
    best(lineFormats, 0.5) ??
    best(unitPlaces(phrasebook), 0.5) ??
    best([leadingStamp], 0.5) ??
    best([stampAndWords], 0.8)
  );
}
