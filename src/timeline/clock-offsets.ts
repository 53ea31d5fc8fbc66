import { agreedInterval } from '../statistics/agreed-interval.ts';
import { medianOffset } from '../statistics/median-offset.ts';
import {
  type Change,
  type ClockOffset,
  compareText,
  type ImportedFile,
  type NonEmpty,
  type SourceLine,
  type Stream,
} from '../vocabulary.ts';
import {
  agreeAsTheyAre,
  type Matched,
  matched,
  middle,
  overlaps,
  shiftsOf,
  type Tellings,
  tellingsOf,
} from './clock-matches.ts';
import { asOneFile, logsOf } from './one-log.ts';
import type { TimelineRules } from './rules.ts';

/**
 * The offset of every file against the first one of a common pair with exact entries, else the densest poll, or `reference`: the median of the differences of the
 * changes both saw, matched one to one and in order. It is measured only from enough such changes whose spread is small; else
 * it is `null`. Two polls may keep their phase, and then the middles deceive: the median is held to what most pairs allow.
 * Files that speak of no common pair have none; parts of one log are measured together. Source: design.md, section 2, Clocks.
 */
export function clockOffsets(
  files: readonly ImportedFile[],
  reference: string | null,
  rules: TimelineRules,
): readonly ClockOffset[] {
  if (files.length < 2) return [];
  const logs = logsOf(files.toSorted(byBegin)).map((parts) => ({ parts, whole: asOneFile(parts) }));
  const baseOf = basesIn(logs, reference);
  const known = new Map<Log, Tellings>();
  const tellings = (log: Log): Tellings => {
    const found = known.get(log) ?? tellingsOf(log.whole);
    known.set(log, found);
    return found;
  };
  const byFile = new Map(
    logs.flatMap((log) => {
      const base = baseOf(log);
      if (base === undefined) return [];
      const pair = { base: base.whole, known: tellings(base) };
      if (base !== log)
        return offsetOf(log.whole, pair, tellings(log), rules).flatMap((offset) =>
          log.parts.map(({ input }) => [input.file, { ...offset, file: input.file }] as const),
        );
      const [first, ...others] = log.parts;
      const alone = { base: first, known: tellingsOf(first) };
      return others
        .filter((part) => overlaps(part, first))
        .flatMap((part) => offsetOf(part, alone, tellingsOf(part), rules))
        .map((offset) => [offset.file, offset] as const);
    }),
  );
  return files.flatMap(({ input }) => byFile.get(input.file) ?? []);
}

/** The order in which files are given is chance, and so is what they are called where another thing can decide. */
function byBegin({ input: a }: ImportedFile, { input: b }: ImportedFile): number {
  return (a.from ?? 0) - (b.from ?? 0) || compareText(a.file, b.file);
}

/** A log that is in one file, or in several that overlap. */
interface Log {
  readonly parts: readonly [ImportedFile, ...ImportedFile[]];
  readonly whole: ImportedFile;
}

/** Gives whose clock a log is held against: that of the first that counts among those with a common pair, which may be itself. */
function basesIn(logs: readonly Log[], reference: string | null): (log: Log) => Log | undefined {
  const isNamed = ({ parts }: Log): boolean => parts.some((f) => f.input.file === reference);
  const isExact = ({ whole }: Log): boolean => whole.streams.some((s) => s.kind === 'entry');
  const densestFirst = logs.toSorted((a, b) => spacingOf(a) - spacingOf(b));
  const inOrder = [...logs.filter(isNamed), ...logs.filter(isExact), ...densestFirst];
  const first = new Map<string, number>();
  for (const [place, log] of inOrder.entries())
    for (const pair of pairsOf(log)) if (!first.has(pair)) first.set(pair, place);
  return (log) => inOrder[Math.min(...pairsOf(log).flatMap((pair) => first.get(pair) ?? []))];
}

/** The least spacing of what is polled; of notes alone none. */
function spacingOf({ whole }: Log): number {
  const polled = whole.streams.filter((s) => s.kind === 'reading');
  return polled.reduce((least, { spacing }) => Math.min(least, spacing), Number.MAX_VALUE);
}

function pairsOf({ whole }: Log): readonly string[] {
  const told = whole.streams.filter((s) => s.kind !== 'note' && s.subject.pair !== '');
  return [...new Set(told.map((s) => s.subject.pair))];
}

/** The first streams of two files that are of one pair; `null` where there are none. */
function commonOf(file: ImportedFile, base: ImportedFile): readonly [Stream, Stream] | null {
  for (const stream of file.streams) {
    const other = base.streams.find((b) => isOfOnePair(stream, b));
    if (other !== undefined) return [stream, other];
  }
  return null;
}

function offsetOf(
  file: ImportedFile,
  { base, known }: { readonly base: ImportedFile; readonly known: Tellings },
  own: Tellings,
  rules: TimelineRules,
): readonly ClockOffset[] {
  const streams = commonOf(file, base);
  if (streams === null) return [];
  const [common, other] = streams;
  const spacing = Math.max(0, ...[...file.streams, ...base.streams].map((s) => s.spacing));
  const most = Math.max(rules.offsetSpreadMs, spacing);
  // Files that agree wherever both were written, as parts of one log do, need no shift, no matter what else it would bring together.
  const shifts = agreeAsTheyAre(file, base, own, known, most) ? [0] : shiftsOf(own, known);
  const pairs = matched(own, known, shifts, most);
  const named = { file: file.input.file, reference: base.input.file, count: pairs.length };
  const offset = estimate(pairs, rules);
  const evidence: NonEmpty<SourceLine> = [
    lineOf(file, pairs[0]?.change ?? common.first),
    lineOf(base, pairs[0]?.other ?? other.first),
  ];
  const isTogether = overlaps(file, base);
  const isChance = momentsIn(pairs, most) < (isTogether ? leastMoments : leastMomentsApart);
  if (offset === null || offset.spread > most || isChance)
    return !isTogether
      ? []
      : [{ ...named, ahead: null, spread: offset?.spread ?? 0, within: 0, isBeyond: false, evidence }];
  const { isAgreed, ...estimated } = offset;
  const least = Math.max(file.resolution, base.resolution, rules.mergeMs);
  // Readings that nearly all leave room for one offset, and not for none, prove it; of others their spacing may explain it.
  const slack = isAgreed ? offset.within + least : Math.max(offset.spread + spacing, least);
  return [{ ...named, ...estimated, isBeyond: Math.abs(offset.ahead) > slack, evidence }];
}

/**
 * One switchover is many changes, and as like another as one hour to the next: where that is all that both saw, nothing says it is the
 * same. Files that follow each other as they are printed need more against that than a second moment. Chosen here.
 */
const [leastMoments, leastMomentsApart] = [2, 3];

/** At how many moments the changes of the file came that both saw. */
function momentsIn(pairs: readonly Matched[], most: number): number {
  const times = pairs.map(({ change }) => middle(change)).sort((a, b) => a - b);
  return times.filter((time, place) => place === 0 || time - (times[place - 1] ?? time) > most).length;
}

function isOfOnePair(a: Stream, b: Stream): boolean {
  return a.kind !== 'note' && b.kind !== 'note' && a.subject.pair !== '' && a.subject.pair === b.subject.pair;
}

function estimate(
  pairs: readonly Matched[],
  rules: TimelineRules,
): (Pick<ClockOffset, 'spread' | 'within'> & { readonly ahead: number; readonly isAgreed: boolean }) | null {
  const exact = pairs.filter((p) => isExact(p.change) && isExact(p.other));
  const taken = exact.length >= rules.offsetCount ? exact : pairs;
  if (taken.length < rules.offsetCount) return null;
  const differences = taken.map(({ change, other }) => middle(change) - middle(other));
  const offset = medianOffset(differences);
  const allowed = agreedInterval(
    taken.map(({ change, other }) => ({
      low: change.earliest - other.time,
      high: change.time - other.earliest,
    })),
  );
  if (offset === null || allowed === null) return null;
  const spread = scatter(differences, offset.median);
  if (taken === exact || allowed.count * 2 <= taken.length)
    return { ahead: offset.median, spread, within: spread, isAgreed: false };
  const ahead = Math.min(allowed.high, Math.max(allowed.low, offset.median));
  const within = Math.max(ahead - allowed.low, allowed.high - ahead);
  return { ahead, spread, within, isAgreed: allowed.count >= agreedShare * taken.length };
}

/** So many of the readings must leave room for one offset. Chosen here, as for the scatter: nine in ten. */
const agreedShare = 0.9;

/** Within so much of the median lie nine in ten of the differences. Chosen here: a median deviation would not see two in five that lie far off. */
function scatter(differences: readonly number[], median: number): number {
  const apart = differences.map((d) => Math.abs(d - median)).sort((a, b) => a - b);
  return apart[Math.ceil(0.9 * apart.length) - 1] ?? 0;
}

function isExact({ time, earliest }: Change): boolean {
  return time === earliest;
}

function lineOf(
  file: ImportedFile,
  { line, text }: { readonly line: number; readonly text: string },
): SourceLine {
  return { file: file.input.file, line, text };
}
