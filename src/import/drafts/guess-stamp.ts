import { type DatePattern, datePattern } from '../clock/date-pattern.ts';
import { readStamp } from '../clock/timestamps.ts';
import { escapedText } from './general-wording.ts';

/** One way of writing a stamp, and what a phrasebook must say so that it is read. */
interface StampKind {
  readonly format: string | null;
  readonly epoch: 's' | 'ms' | 'us' | null;
  /** Seconds since an instant that no line tells. */
  readonly isSince: boolean;
  readonly hasYear: boolean;
  /** Where the stamp ends that the text begins with; -1 if it begins with none. */
  end(text: string): number;
}

/** How the lines of a text write their stamps. */
export interface StampGuess extends Omit<StampKind, 'end'> {
  /** A pattern of the stamp alone. */
  readonly pattern: string;
  readonly sample: string;
  /** The stamp of a line, what stands before it and behind; `null` for a line that has none in that place. */
  split(line: string): SplitLine | null;
}

export interface SplitLine {
  readonly before: string;
  readonly stamp: string;
  readonly after: string;
}

/** What the time reader does not read by itself; common practice, no source. */
const formats = [
  'yyyy-MM-dd_HH:mm:ss.SSS',
  'yyyy-MM-dd_HH:mm:ss',
  "yyyyMMdd'T'HHmmss.SSS",
  "yyyyMMdd'T'HHmmss",
  'yyyyMMdd HH:mm:ss.SSS',
  'yyyyMMdd HH:mm:ss',
  'yyyyMMdd-HH:mm:ss.SSS',
  'yyyyMMdd-HH:mm:ss',
  'yyyyMMdd HHmmss',
  'yyyyMMdd-HHmmss',
  'yyyyMMddHHmmss',
  'dd/MMM/yyyy:HH:mm:ss Z',
  'dd/MMM/yyyy:HH:mm:ss',
  'EEE MMM d HH:mm:ss yyyy',
  'EEE MMM  d HH:mm:ss yyyy',
  'EEE MMM d HH:mm:ss',
  'EEE, d MMM yyyy HH:mm:ss',
  'EEE d MMM yyyy HH:mm:ss',
  'MM-dd HH:mm:ss.SSS',
  'MM-dd HH:mm:ss',
  'MM/dd HH:mm:ss.SSS',
  'MM/dd HH:mm:ss',
  'yyMMdd HH:mm:ss',
  'yyyy-DDD HH:mm:ss',
];

const kinds: readonly StampKind[] = [
  plain(),
  ...formats.flatMap((source) => {
    const pattern = datePattern(source);
    return typeof pattern === 'string' ? [] : [formatted(pattern)];
  }),
  counted('us', /^[0-9]{16}(?![0-9])/),
  { ...counted(null, /^[0-9]{1,9}\.[0-9]{3,9}(?![0-9.:])/), isSince: true },
];

/** ISO 8601, day and month in any order, month names, a clock alone, epoch seconds and milliseconds. */
function plain(): StampKind {
  const orders = ['day-first', 'month-first'] as const;
  return {
    format: null,
    epoch: null,
    isSince: false,
    hasYear: true,
    end(text) {
      for (const order of orders) {
        const stamp = readStamp(text, { order, year: 2000, day: undefined });
        if (typeof stamp === 'string') continue;
        const written = text.slice(0, stamp.end);
        // A date alone, or a number of nine figures, may be anything.
        if (/\d:\d/.test(written) || /^\d{10}(?:\d{3})?(?:\.\d+)?$/.test(written)) return stamp.end;
      }
      return -1;
    },
  };
}

function formatted(pattern: DatePattern): StampKind {
  return {
    format: pattern.source,
    epoch: null,
    isSince: false,
    hasYear: pattern.hasYear,
    end(text) {
      const stamp = pattern.read(text, { order: undefined, year: 2000, day: undefined });
      return typeof stamp === 'string' || /^\w/.test(text.slice(stamp.end)) ? -1 : stamp.end;
    },
  };
}

function counted(epoch: StampKind['epoch'], form: RegExp): StampKind {
  const end = (text: string): number => form.exec(text)?.[0].length ?? -1;
  return { format: null, epoch, isSince: false, hasYear: true, end };
}

const mostSampled = 100;
/** How far into a line a stamp is looked for, and behind how many words at most. */
const farthest = 80;
const mostWords = 4;
/** Of the lines: others may go on with what a line began. */
const leastShare = 0.1;

/** The way of writing a stamp, and its place in the line, that most lines have; `null` where hardly any has one. */
export function guessStamp(lines: readonly string[]): StampGuess | null {
  const sample = lines.slice(0, mostSampled);
  const least = Math.max(1, Math.min(2, sample.length), sample.length * leastShare);
  const found = kinds.flatMap((kind) =>
    Array.from({ length: mostWords + 1 }, (_, words) => {
      const split = (line: string): SplitLine | null => splitAt(line, kind, words);
      const fitting = sample.flatMap((line) => split(line) ?? []);
      return { kind, split, fitting, length: fitting.reduce((sum, f) => sum + f.stamp.length, 0) };
    }),
  );
  const mostFitting = Math.max(...found.map((f) => f.fitting.length));
  // Of those that most lines have, the one that is written at most length says most: with its year, its fraction.
  const best = found
    .filter((f) => f.fitting.length >= mostFitting * 0.9)
    .reduce((a, b) => (b.length > a.length ? b : a));
  const [first] = best.fitting;
  if (first === undefined || best.fitting.length < least) return null;
  const { format, epoch, isSince, hasYear } = best.kind;
  const isYearPrinted = hasYear && (format !== null || best.fitting.some((f) => printsYear(f.stamp)));
  return {
    format,
    epoch,
    isSince,
    hasYear: isYearPrinted || epoch !== null || isSince,
    pattern: stampPattern(lines.flatMap((line) => best.split(line)?.stamp ?? [])),
    sample: first.stamp,
    split: best.split,
  };
}

function printsYear(stamp: string): boolean {
  return /\d{4}|\d[-/.]\d+[-/.]\d/.test(stamp);
}

/** The line taken apart at the stamp that stands behind so many words, with or without a bracket before it. */
function splitAt(line: string, kind: StampKind, words: number): SplitLine | null {
  const text = line.slice(0, farthest * 2);
  let at = /^\s*/.exec(text)?.[0].length ?? 0;
  for (let word = 0; word < words; word += 1) {
    const found = /^[^\s|;,]*[\s|;,]+/.exec(text.slice(at));
    if (found === null || at > farthest) return null;
    at += found[0].length;
  }
  const opening = /^(?:<\d{1,3}>)?(?:[[("']\s*)?/.exec(text.slice(at))?.[0] ?? '';
  for (const from of new Set([at, at + opening.length])) {
    const end = kind.end(text.slice(from));
    if (end > 0)
      return {
        before: line.slice(0, from),
        stamp: line.slice(from, from + end),
        after: line.slice(from + end),
      };
  }
  return null;
}

const mostShapes = 4;

/** A pattern of all stamps: figures and letters are made general, each way of writing it stands for itself. */
function stampPattern(stamps: readonly string[]): string {
  const shapes = new Map<string, number>();
  for (const stamp of stamps) {
    const shape = shapeOf(stamp);
    shapes.set(shape, (shapes.get(shape) ?? 0) + 1);
  }
  const [first, ...others] = [...shapes]
    .sort((a, b) => b[1] - a[1])
    .slice(0, mostShapes)
    .map(([shape]) => shape)
    // The longest first: the first that fits is taken.
    .sort((a, b) => b.length - a.length);
  return others.length === 0 ? (first ?? '') : [first, ...others].join('|');
}

function shapeOf(stamp: string): string {
  return stamp
    .split(/(\d+|\p{L}+|\s+)/u)
    .map((piece) => {
      if (/^\d/.test(piece)) return '\\d+';
      if (/^\p{L}/u.test(piece)) return '\\pL+';
      return /^\s/.test(piece) ? '\\s+' : escapedText(piece);
    })
    .join('');
}
