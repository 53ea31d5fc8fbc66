import { detached } from '../bytes/decode.ts';
import type { Sink } from '../changes/sink.ts';
import { explain, type TimeReader, timeReader } from '../clock/time-reader.ts';
import { zoneOf } from '../clock/zones.ts';
import { saysUnit } from '../phrasebook/file-subject.ts';
import type { FileSubject, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { withoutSeverity } from '../phrasebook/severity-words.ts';
import type { Head } from './head.ts';
import type { TextImporter } from './importer.ts';
import { leadingStamp, stampAndWords, unitPlaces } from './leading-stamp.ts';
import { fieldReader, type LineParts } from './line-fields.ts';
import type { LineFormat, LineRules } from './line-format.ts';
import { lineFormats } from './line-formats.ts';
import { type LineWords, lineWords } from './line-words.ts';
import { ownFormat } from './own-format.ts';
import { fieldsBeside } from './value-of-message.ts';

/** Text lines: RFC 5424, RFC 3164, JSON, key=value, or a leading timestamp, a unit and a message. */
export const lines: TextImporter = {
  id: 'lines',
  title: 'lines',
  summary: 'text logs: RFC 5424, RFC 3164, key=value, JSON lines, or a time, a unit and a message',
  ruleKeys: ['columns', 'line', 'record'],
  shape: 'text',
  recognise(head, phrasebook) {
    const format = formatOf(head, phrasebook);
    return format === null
      ? {
          fits: false,
          because: 'no line begins with a timestamp and a unit or is RFC 5424, RFC 3164, JSON or key=value',
        }
      : { fits: true, because: `its lines are ${format.title}`, isLast: format === stampAndWords };
  },
  dateText(head, phrasebook) {
    const format = formatOf(head, phrasebook);
    const rules = rulesOf(head, phrasebook);
    const times = timeReader(zoneOf('UTC', ''), undefined, 2000, phrasebook.pattern);
    return (row) => {
      const line = row.cell(0);
      // Where a stamp may stand in the midst of a line, the line has to be taken apart.
      const parts = format?.hasFields === true ? format.take(line, times, rules) : null;
      return parts === null || 'wrong' in parts ? withoutSeverity(line) : String(parts.stamp);
    };
  },
  open(head, phrasebook, times) {
    const format = formatOf(head, phrasebook) ?? leadingStamp;
    const rules = rulesOf(head, phrasebook);
    const words = lineWords(head.rule);
    const value = head.rule?.columns.value;
    const isOpen = (name: string): boolean =>
      name === value ||
      (!rules.fields.isKnown(name) &&
        !words.names.has(name) &&
        parameterNamed(phrasebook, name) === undefined);
    return (row, sink) => {
      if (row.width() === 0) return sink.reject(...headless);
      const text = row.cell(0);
      if (text.trim() === '') return sink.ignore();
      const parts = format.take(text, times, rules);
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
      put(parts, times, sink, rules, words, isOpen);
    };
  },
};

/** What stands before the first record of a text. */
const headless = [
  'The lines belong to no record: they come before the first.',
  'Export it from an earlier time, or correct files.record in the phrasebook.',
] as const;

/** What the rule for the file says of its lines. */
function rulesOf({ rule }: Head, phrasebook: Phrasebook): LineRules {
  const of = rule?.of;
  return {
    fields: fieldReader(rule),
    isUnit: of === undefined ? null : unitTest(phrasebook, of),
    hasStampPattern: phrasebook.pattern !== undefined,
  };
}

/** Whether a text is a unit in a file of which it is known whose it is; each text is looked at once. */
function unitTest(phrasebook: Phrasebook, of: FileSubject): (text: string) => boolean {
  const known = new Map<string, boolean>();
  return (text) => {
    const found = known.get(text);
    if (found !== undefined) return found;
    const isUnit = saysUnit(phrasebook, { unit: text, half: '', role: '' }, of);
    if (known.size < mostKnown) known.set(detached(text), isUnit);
    return isUnit;
  };
}

const mostKnown = 4096;

function put(
  parts: LineParts,
  times: TimeReader,
  sink: Sink,
  { fields: reader }: LineRules,
  words: LineWords,
  isOpen: (name: string) => boolean,
): void {
  const at = typeof parts.stamp === 'number' ? parts.stamp : times.read(parts.stamp);
  if (typeof at !== 'number') {
    const { what, fix, setting } = explain(String(parts.stamp), at);
    sink.reject(what, fix, setting);
    return;
  }
  const { fields, unit, pair, half = '', role = '', message, reading } = parts;
  const isPair = unit !== '' && fields.get('pair') === unit;
  const isApart = half !== '' || role !== '' || pair !== undefined || isPair;
  const address = isApart ? { unit, ...(pair === undefined ? {} : { pair }), half, role, isPair } : undefined;
  const beside = message === null || reading !== undefined ? {} : fieldsBeside(fields, isOpen);
  if (message !== null) sink.entry(at, unit, message, address, { state: words.state(fields), ...beside });
  const bad = words.badQuality(fields);
  if (bad !== null) {
    sink.unread(at, bad);
    return;
  }
  if (role !== '') sink.reading(at, unit, 'role', role, address);
  if (reading !== undefined) sink.reading(at, unit, reading.parameter, reading.value, address);
  for (const [name, value] of fields)
    if (!reader.isKnown(name) && !words.names.has(name) && name !== beside.name)
      sink.reading(at, unit, name, value, address);
}

function speaksFor(format: LineFormat, line: string, times: TimeReader, rules: LineRules): boolean {
  const parts = format.take(line, times, rules);
  // A line that breaks the rules of its format speaks for it all the same.
  return parts !== null && ('wrong' in parts || rules.isUnit !== null || format.speaks?.(parts) !== false);
}

/**
 * The format that most of the first lines are written in: one that says itself what each part is, or a stamp with a unit in the
 * field in which most lines have one by its form, else in the first, else without one; without one at once where the rule for
 * the file says whose it is.
 */
function formatOf(head: Head, phrasebook: Phrasebook): LineFormat | null {
  if (head.rule?.line !== undefined) return ownFormat(head.rule.line);
  const rules = rulesOf(head, phrasebook);
  // The order of day and month is not settled yet: a stamp may be either.
  const orders = ['day-first', 'month-first'] as const;
  const probes = orders.map((order) => timeReader(zoneOf('UTC', ''), order, 2000, phrasebook.pattern));
  const sample = head.lines.slice(0, 20);
  const best = (formats: readonly LineFormat[], least: number): LineFormat | null => {
    const [first] = formats
      .map((format) => ({
        format,
        fits: sample.filter((line) => probes.some((p) => speaksFor(format, line, p, rules))).length,
      }))
      .sort((a, b) => b.fits - a.fits);
    return first !== undefined && first.fits > sample.length * least ? first.format : null;
  };
  // A rule that names columns is for a table or for fields; in other lines its names have no effect.
  const hasColumns = Object.values(head.rule?.columns ?? {}).some((name) => name !== undefined);
  const itself = best(hasColumns ? lineFormats.filter((f) => f.hasFields === true) : lineFormats, 0.5);
  if (hasColumns) return itself;
  if (itself !== null || rules.isUnit !== null) return itself ?? best([stampAndWords], 0.5);
  return best(unitPlaces(phrasebook), 0.5) ?? best([leadingStamp], 0.5) ?? best([stampAndWords], 0.8);
}
