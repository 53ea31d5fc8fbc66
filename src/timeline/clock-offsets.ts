import { agreedInterval } from '../statistics/agreed-interval.ts';
import { medianOffset } from '../statistics/median-offset.ts';
import type { Change, ImportedFile, NonEmpty, SourceLine, Stream } from '../vocabulary.ts';
import { groupBy } from './groups.ts';
import type { TimelineRules } from './rules.ts';

/** How far the clock of one file is ahead of the reference's, from the changes both saw. */
export interface ClockOffset {
  readonly file: string;
  readonly reference: string;
  /** Milliseconds that the file is ahead, negative if it is behind; `null`: not measured. */
  readonly ahead: number | null;
  /** How far the differences scatter about it, in milliseconds: nine in ten lie within. */
  readonly spread: number;
  /** How many changes both saw. */
  readonly count: number;
  /** The true offset lies at most this many milliseconds from `ahead`, by what most pairs allow. */
  readonly within: number;
  /** Measured, and beyond its spread and what the spacing of the polls can explain. */
  readonly isBeyond: boolean;
  readonly evidence: NonEmpty<SourceLine>;
}

/** How far apart two sightings of one change may be stamped to be taken for a pair, in milliseconds. Chosen here. */
const reach = 7_200_000;

/**
 * The offset of every file against the first one with exact entries, or `reference`: the median of the differences of the
 * changes both saw, matched one to one and in order. It is measured only from enough such changes whose spread is small; else
 * it is `null`. Two polls may keep their phase, and then the middles deceive: the median is held to what most pairs allow.
 * Files that speak of no common pair have none. Source: design.md, section 2, Clocks.
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
  const known = tellingsOf(base);
  return files.filter((f) => f !== base).flatMap((file) => offsetOf(file, base, known, rules));
}

/** A change as a file tells it, and the half that does. */
interface Telling {
  readonly change: Change;
  readonly speaker: string | null;
}

type Tellings = ReadonlyMap<string, readonly Telling[]>;

interface Matched {
  readonly change: Change;
  readonly other: Change;
}

function offsetOf(
  file: ImportedFile,
  base: ImportedFile,
  known: Tellings,
  rules: TimelineRules,
): readonly ClockOffset[] {
  const common = file.streams.find((s) => base.streams.some((b) => isOfOnePair(s, b)));
  const other = base.streams.find((b) => common !== undefined && isOfOnePair(common, b));
  if (common === undefined || other === undefined) return [];
  const spacing = Math.max(0, ...[...file.streams, ...base.streams].map((s) => s.spacing));
  const most = Math.max(rules.offsetSpreadMs, spacing);
  const pairs = matched(tellingsOf(file), known, most);
  const named = { file: file.input.file, reference: base.input.file, count: pairs.length };
  const offset = estimate(pairs, rules);
  const evidence: NonEmpty<SourceLine> = [
    lineOf(file, pairs[0]?.change ?? common.first),
    lineOf(base, pairs[0]?.other ?? other.first),
  ];
  if (offset === null || offset.spread > most)
    return !overlaps(file, base)
      ? []
      : [{ ...named, ahead: null, spread: offset?.spread ?? 0, within: 0, isBeyond: false, evidence }];
  const slack = Math.max(offset.spread + spacing, file.resolution, base.resolution, rules.mergeMs);
  return [{ ...named, ...offset, isBeyond: Math.abs(offset.ahead) > slack, evidence }];
}

/** True if both were written at one time: of files that follow each other there is nothing to measure. */
function overlaps({ input: a }: ImportedFile, { input: b }: ImportedFile): boolean {
  if (a.from === null || a.to === null || b.from === null || b.to === null) return false;
  return a.from < b.to && b.from < a.to;
}

function isOfOnePair(a: Stream, b: Stream): boolean {
  return a.kind !== 'note' && b.kind !== 'note' && a.subject.pair !== '' && a.subject.pair === b.subject.pair;
}

function estimate(
  pairs: readonly Matched[],
  rules: TimelineRules,
): (Pick<ClockOffset, 'spread' | 'within'> & { readonly ahead: number }) | null {
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
    return { ahead: offset.median, spread, within: spread };
  const ahead = Math.min(allowed.high, Math.max(allowed.low, offset.median));
  return { ahead, spread, within: Math.max(ahead - allowed.low, allowed.high - ahead) };
}

/** Within so much of the median lie nine in ten of the differences. Chosen here: a median deviation would not see two in five that lie far off. */
function scatter(differences: readonly number[], median: number): number {
  const apart = differences.map((d) => Math.abs(d - median)).sort((a, b) => a - b);
  return apart[Math.ceil(0.9 * apart.length) - 1] ?? 0;
}

/**
 * The changes that both files saw, one to one and in order: under the one shift of the clocks that brings most of them together,
 * of several the least. None where that is less than half of what either tells: then it is chance.
 */
function matched(own: Tellings, known: Tellings, tolerance: number): readonly Matched[] {
  let best: readonly Matched[] = [];
  for (const shift of shiftsOf(own, known)) {
    const pairs = [...own].flatMap(([meaning, list]) =>
      pairsAt(list, known.get(meaning) ?? [], shift, tolerance),
    );
    if (pairs.length > best.length) best = pairs;
  }
  const comparable = [...own].map(([meaning, list]) =>
    Math.min(list.length, known.get(meaning)?.length ?? 0),
  );
  return best.length * 2 > comparable.reduce((sum, count) => sum + count, 0) ? best : [];
}

/** How many changes of each meaning, and how many shifts, are tried: enough to find one that fits, of long lists not all. */
const [triedChanges, triedShifts] = [6, 200];

/** Shifts that bring one of the first changes of a meaning onto one of the others within reach; the least first. */
function shiftsOf(own: Tellings, known: Tellings): readonly number[] {
  const shifts = [...own].flatMap(([meaning, list]) =>
    list.slice(0, triedChanges).flatMap((a) =>
      (known.get(meaning) ?? [])
        .filter((b) => isSameSpeaker(a, b))
        .map((b) => middle(a.change) - middle(b.change))
        .filter((d) => Math.abs(d) <= reach),
    ),
  );
  return [...new Set([0, ...shifts])].sort((a, b) => Math.abs(a) - Math.abs(b)).slice(0, triedShifts);
}

/** Pairs in order where the second list is set off by a shift. */
function pairsAt(
  list: readonly Telling[],
  others: readonly Telling[],
  shift: number,
  tolerance: number,
): readonly Matched[] {
  const pairs: Matched[] = [];
  let place = 0;
  for (const telling of list) {
    const at = middle(telling.change) - shift;
    const slack = tolerance + halfWidth(telling.change);
    for (let other = others[place]; other !== undefined; other = others[place]) {
      const apart = middle(other.change) - at;
      const room = slack + halfWidth(other.change);
      if (apart > room) break;
      place += 1;
      if (apart < -room || !isSameSpeaker(telling, other)) continue;
      pairs.push({ change: telling.change, other: other.change });
      break;
    }
  }
  return pairs;
}

/** What the two halves each say of the pair at their own times is not one change seen twice. */
function isSameSpeaker(a: Telling, b: Telling): boolean {
  return a.speaker === null || b.speaker === null || a.speaker === b.speaker;
}

function isExact({ time, earliest }: Change): boolean {
  return time === earliest;
}

/** The changes of a file that say the same, in the order of time. */
function tellingsOf(file: ImportedFile): Tellings {
  const tellings = file.changes
    .filter(isTimed)
    .map((change) => ({ change, speaker: file.streams[change.stream]?.subject.half ?? null }))
    .sort((a, b) => middle(a.change) - middle(b.change));
  return groupBy(tellings, ({ change }) => meaningOf(change));
}

/** A first reading, or one after silence, says how things are, not when they changed; a note tells the minute only. */
function isTimed({ kind, before, value, earliest, time }: Change): boolean {
  if (kind === 'entry') return true;
  return kind === 'reading' && !(before === null && earliest === time) && before !== value;
}

function meaningOf({ subject, signal, value }: Change): string {
  return [subject.pair, subject.half ?? subject.role ?? '', signal, value ?? ''].join('\n');
}

function middle({ time, earliest }: Change): number {
  return (time + earliest) / 2;
}

function halfWidth({ time, earliest }: Change): number {
  return (time - earliest) / 2;
}

function lineOf(
  file: ImportedFile,
  { line, text }: { readonly line: number; readonly text: string },
): SourceLine {
  return { file: file.input.file, line, text };
}
