import type { Sink } from '../changes/sink.ts';
import { explain, type TimeReader, timeReader } from '../clock/time-reader.ts';
import { zoneOf } from '../clock/zones.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import type { Head } from './head.ts';
import type { TextImporter } from './importer.ts';
import {
  fieldNames,
  type LineFormat,
  type LineParts,
  leadingStamp,
  lineFormats,
  ownFormat,
} from './line-formats.ts';
import { type LineWords, lineWords } from './line-words.ts';

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
      : { fits: true, because: `its lines are ${format.title}` };
  },
  open(head, phrasebook, times) {
    const format = formatOf(head, phrasebook) ?? leadingStamp;
    const words = lineWords(head.rule);
    return (row, sink) => {
      const text = row.text();
      if (text.trim() === '') return sink.ignore();
      const parts = format.take(text, times);
      if (parts === null)
        return sink.reject(
          `The line is not ${format.title}.`,
          'Correct the line, or describe it with files.line in the phrasebook.',
        );
      put(parts, times, sink, words);
    };
  },
};

function put(parts: LineParts, times: TimeReader, sink: Sink, words: LineWords): void {
  const at = typeof parts.stamp === 'number' ? parts.stamp : times.read(parts.stamp);
  if (typeof at !== 'number') {
    const { what, fix } = explain(String(parts.stamp), at);
    sink.reject(what, fix);
    return;
  }
  const { fields, unit, message } = parts;
  const half = fields.get('half') ?? '';
  const role = fields.get('role') ?? '';
  const address = half === '' && role === '' ? undefined : { unit, half, role };
  if (message !== null) sink.entry(at, unit, message, address, words.state(fields));
  const bad = words.badQuality(fields);
  if (bad !== null) {
    sink.unread(at, bad);
    return;
  }
  if (role !== '') sink.reading(at, unit, 'role', role, address);
  for (const [name, value] of fields)
    if (!known.has(name) && !words.names.has(name)) sink.reading(at, unit, name, value, address);
}

function speaksFor(format: LineFormat, line: string, times: TimeReader): boolean {
  const parts = format.take(line, times);
  return parts !== null && format.speaks?.(parts) !== false;
}

/** The format that most of the first lines are written in. */
function formatOf(head: Head, { pattern }: Phrasebook): LineFormat | null {
  if (head.rule?.line !== undefined) return ownFormat(head.rule.line);
  // The order of day and month is not settled yet: a stamp may be either.
  const orders = ['day-first', 'month-first'] as const;
  const probes = orders.map((order) => timeReader(zoneOf('UTC', ''), order, 2000, pattern));
  const sample = head.lines.slice(0, 20);
  const scored = lineFormats
    .map((format) => ({
      format,
      fits: sample.filter((line) => probes.some((p) => speaksFor(format, line, p))).length,
    }))
    .sort((a, b) => b.fits - a.fits);
  const best = scored[0];
  return best !== undefined && best.fits * 2 > sample.length ? best.format : null;
}
