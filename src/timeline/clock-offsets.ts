import { agreedInterval } from '../statistics/agreed-interval.ts';
import { type MedianOffset, medianOffset } from '../statistics/median-offset.ts';
import type { Change, ImportedFile, NonEmpty, SourceLine } from '../vocabulary.ts';
import type { TimelineRules } from './rules.ts';

/** How far the clock of one file is ahead of the reference's, from the changes both saw. */
export interface ClockOffset {
  readonly file: string;
  readonly reference: string;
  /** Milliseconds that the file is ahead; negative if it is behind. */
  readonly ahead: number;
  readonly spread: number;
  readonly count: number;
  /** The true offset lies at most this many milliseconds from `ahead`, by what most pairs allow. */
  readonly within: number;
  /** Beyond its spread and what the spacing of the polls can explain. */
  readonly isBeyond: boolean;
  readonly evidence: NonEmpty<SourceLine>;
}

/** How far apart two sightings of one change may be stamped to be taken for a pair, in milliseconds. */
const reach = 900_000;
/** Fewer pairs than this say nothing of how far they scatter. */
const leastPairs = 3;

/**
 * The offset of every file against the first one with exact entries, or `reference`: the median of the paired differences
 * of the changes both saw; exact entries count as they are, and where there are too few, polled ones from the middle of
 * their bounds. Two polls may keep their phase, and then the middles deceive: the median is held to what most pairs allow.
 * Field notes and files that share no change have none. Source: design.md, section 2, Clocks.
 */
export function clockOffsets(
  files: readonly ImportedFile[],
  reference: string | null,
  rules: TimelineRules,
): readonly ClockOffset[] {
  const base =
    files.find((f) => f.input.file === reference) ??
    files.find((f) => f.streams.some((s) => s.kind === 'entry')) ??
    files[0];
  if (base === undefined || files.length === 1) return [];
  const known = byMeaning(base);
  return files.filter((f) => f !== base).flatMap((file) => offsetOf(file, base, known, rules));
}

function offsetOf(
  file: ImportedFile,
  base: ImportedFile,
  known: ReadonlyMap<string, readonly Change[]>,
  rules: TimelineRules,
): readonly ClockOffset[] {
  const own = byMeaning(file);
  const pairs = file.changes.filter(isTimed).flatMap((change) => {
    const meaning = meaningOf(change);
    const other = nearest(known.get(meaning) ?? [], change);
    // Each must be the other's nearest, in a time that both files cover: else they are two changes, not one.
    const isMutual = other !== undefined && nearest(own.get(meaning) ?? [], other) === change;
    return isMutual && covers(base, change) && covers(file, other) ? [{ change, other }] : [];
  });
  const offset = estimate(pairs);
  const first = pairs[0];
  if (offset === null || first === undefined) return [];
  const spacing = Math.max(0, ...[...file.streams, ...base.streams].map((s) => s.spacing));
  const slack = Math.max(offset.spread + spacing, file.resolution, base.resolution, rules.mergeMs);
  return [
    {
      file: file.input.file,
      reference: base.input.file,
      ahead: offset.median,
      within: offset.within,
      spread: offset.spread,
      count: offset.count,
      isBeyond: offset.count >= leastPairs && Math.abs(offset.median) > slack,
      evidence: [lineOf(file, first.change), lineOf(base, first.other)],
    },
  ];
}

interface Pair {
  readonly change: Change;
  readonly other: Change;
}

function estimate(pairs: readonly Pair[]): (MedianOffset & { readonly within: number }) | null {
  const exact = pairs.filter((p) => isExact(p.change) && isExact(p.other));
  const taken = exact.length >= leastPairs ? exact : pairs;
  const offset = medianOffset(taken.map(({ change, other }) => middle(change) - middle(other)));
  const allowed = agreedInterval(
    taken.map(({ change, other }) => ({
      low: change.earliest - other.time,
      high: change.time - other.earliest,
    })),
  );
  if (offset === null || allowed === null) return null;
  if (taken === exact || allowed.count * 2 <= taken.length) return { ...offset, within: offset.spread };
  const median = Math.min(allowed.high, Math.max(allowed.low, offset.median));
  return { ...offset, median, within: Math.max(median - allowed.low, allowed.high - median) };
}

function isExact({ time, earliest }: Change): boolean {
  return time === earliest;
}

function covers({ input }: ImportedFile, change: Change): boolean {
  const at = middle(change);
  return input.from !== null && input.to !== null && at >= input.from && at <= input.to;
}

/** The changes of a file that say the same, in the order of time. */
function byMeaning(file: ImportedFile): ReadonlyMap<string, readonly Change[]> {
  const groups = new Map<string, Change[]>();
  for (const change of file.changes.filter(isTimed)) {
    const list = groups.get(meaningOf(change));
    if (list === undefined) groups.set(meaningOf(change), [change]);
    else list.push(change);
  }
  for (const list of groups.values()) list.sort((a, b) => middle(a) - middle(b));
  return groups;
}

/** A first reading says how things are, not when they changed; a note tells the minute only. */
function isTimed({ kind, before, earliest, time }: Change): boolean {
  return kind === 'entry' || (kind === 'reading' && !(before === null && earliest === time));
}

function meaningOf({ subject, signal, value }: Change): string {
  return [subject.pair, subject.half ?? subject.role ?? '', signal, value ?? ''].join('\n');
}

function middle({ time, earliest }: Change): number {
  return (time + earliest) / 2;
}

function nearest(others: readonly Change[], change: Change): Change | undefined {
  const at = middle(change);
  const next = others[countBefore(others, at)];
  const last = others[countBefore(others, at) - 1];
  // Of two as near, the earlier; of several at one instant, the first.
  const before = last === undefined ? undefined : others[countBefore(others, middle(last))];
  const apart = (other: Change | undefined): number =>
    other === undefined ? Number.POSITIVE_INFINITY : Math.abs(middle(other) - at);
  const best = apart(before) <= apart(next) ? before : next;
  return apart(best) <= reach ? best : undefined;
}

/** How many changes of a list in the order of time stand before an instant. */
function countBefore(changes: readonly Change[], at: number): number {
  let low = 0;
  let high = changes.length;
  while (low < high) {
    const half = (low + high) >> 1;
    const change = changes[half];
    if (change !== undefined && middle(change) < at) low = half + 1;
    else high = half;
  }
  return low;
}

function lineOf(file: ImportedFile, { line, text }: Change): SourceLine {
  return { file: file.input.file, line, text };
}
