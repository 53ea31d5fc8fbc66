import { eachChange } from '../changes.ts';
import {
  type FileFigures,
  type Finding,
  type ImportedFile,
  type SourceLine,
  type StrayLines,
  type StreamPoint,
  sayDuration,
} from '../vocabulary.ts';
import { farYears, yearMs } from './far-stamps.ts';

/** A clock that was typed wrongly or reset gives few such lines; more are a log of another time. Chosen here. */
const mostStray = 3;
const leastOthers = 10;
/**
 * Half a year at least, and ten times as long as all others take: a wrong digit of the year lies a year off, while the months
 * between two entries of a quiet pair are no more than its log is long. Chosen here.
 */
const leastGapMs = yearMs / 2;
const gapInSpans = 10;

/**
 * Stamps of a file that lie far from all others in it, though not so far as `farStamps` tells of: one finding for a file. They
 * are used as printed.
 */
export function strayStamps(files: readonly FileFigures[]): readonly Finding[] {
  return files.flatMap(({ input, strays }) => (strays === null ? [] : [findingOf(input.file, strays)]));
}

/** The lines at either end of a file that lie far from all others in it; `null`: there are none. */
export function strayLines(file: ImportedFile): StrayLines | null {
  return strayIn(linesOf(file));
}

/** The lines that are known by their stamps, each once, in the order of time. */
function linesOf({ changes, streams }: ImportedFile): readonly StreamPoint[] {
  const byLine = new Map<number, StreamPoint>();
  for (const { time, line, text } of eachChange(changes)) byLine.set(line, { time, line, text });
  for (const { first, last } of streams)
    for (const end of [first, last]) if (!byLine.has(end.line)) byLine.set(end.line, end);
  return [...byLine.values()].sort((a, b) => a.time - b.time);
}

/** The most lines at either end that a gap parts from the rest. */
function strayIn(lines: readonly StreamPoint[]): StrayLines | null {
  for (let count = mostStray; count > 0; count -= 1)
    for (let before = count; before >= 0; before -= 1) {
      const found = partedBy(lines, before, count - before);
      if (found !== null) return found;
    }
  return null;
}

function partedBy(lines: readonly StreamPoint[], before: number, after: number): StrayLines | null {
  const others = lines.slice(before, lines.length - after);
  const [from, to] = [others[0]?.time, others.at(-1)?.time];
  if (others.length < leastOthers || from === undefined || to === undefined) return null;
  const gaps = [lines[before - 1], lines[lines.length - after]].flatMap((line) =>
    line === undefined ? [] : [line.time < from ? from - line.time : line.time - to],
  );
  const gap = Math.min(...gaps);
  const isFar = gap > leastGapMs && gap > gapInSpans * (to - from) && Math.max(...gaps) <= farYears * yearMs;
  const [first, ...rest] = [...lines.slice(0, before), ...lines.slice(lines.length - after)];
  return isFar && first !== undefined ? { strays: [first, ...rest], gap, from, to } : null;
}

function findingOf(file: string, { strays, gap, from, to }: StrayLines): Finding {
  const places = strays.map(({ time, line }) => `${dayOf(time)} in line ${line}`).join('; ');
  const lie = strays.length === 1 ? 'One timestamp is' : `${strays.length} timestamps are`;
  const place = ({ line, text }: StreamPoint): SourceLine => ({ file, line, text });
  const [first, ...rest] = strays;
  return {
    id: 'clock-step',
    severity: 'info',
    pair: null,
    half: null,
    from: first.time,
    to: (rest.at(-1) ?? first).time,
    statement: `${lie} ${sayDuration(gap / 1000)} or more from all others of ${file} (${dayOf(from)} to ${dayOf(to)}): ${places}. They were used as printed: correct the rows if the date is wrong.`,
    figures: { count: strays.length, gapSeconds: gap / 1000 },
    evidence: [place(first), ...rest.map(place)],
  };
}

function dayOf(time: number): string {
  return new Date(time).toISOString().slice(0, 10);
}
