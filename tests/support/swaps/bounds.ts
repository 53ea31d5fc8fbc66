import type { BringUp, Instant, Swap } from '../../../src/vocabulary.ts';
import type { Dressed, Source } from '../stories/dressing.ts';
import { overlap, spellsOf } from '../stories/history.ts';
import type { TrueBringUp } from '../stories/swap-facts.ts';
import type { ToldSwap } from '../stories/swap-story.ts';

/**
 * One true instant or duration, and what became of it: within its reported bounds, outside, or not reported. `hidden` is one that
 * is outside by a spell that fell between two readings of every poll that could show it: reports say that such are not excluded.
 */
export interface Bounded {
  readonly kind: BoundedKind;
  readonly found: 'inside' | 'outside' | 'not reported' | 'hidden';
}

export const boundedKinds = [
  'removedAt',
  'insertedAt',
  'switchover',
  'bring-up start',
  'sync',
  'light',
  'exposure',
] as const;
export type BoundedKind = (typeof boundedKinds)[number];

/** Half a millisecond: sums of whole milliseconds in seconds. */
const rounding = 0.0005;

/** Looks every true instant and duration of a swap up in its answer. */
export function boundsOf(told: ToldSwap, { sources }: Dressed, swap: Swap): readonly Bounded[] {
  const { truth } = told;
  // A stamp without decimals is cut off: what happened in its second is told at its begin.
  const logs = sources.filter((s) => s.kind !== 'notes');
  const cutOffMs = 1000 * Math.max(0, ...logs.map((s) => s.resolutionSeconds));
  const at = (kind: BoundedKind, time: number, found: Instant | undefined): Bounded => {
    if (found === undefined) return { kind, found: 'not reported' };
    return { kind, found: isWithin(time, found.earliest, found.time + cutOffMs) };
  };
  const replaced = [...new Set(truth.replacements.map((r) => r.half))];
  const moves = replaced.flatMap((half) => {
    const own = truth.replacements.filter((r) => r.half === half);
    const row = swap.halves.find((h) => h.half === half);
    return [
      at('removedAt', own[0]?.removed ?? 0, row?.removedAt),
      at('insertedAt', own.at(-1)?.inserted ?? 0, row?.insertedAt ?? undefined),
    ];
  });
  const switchovers = truth.switchovers.map((s) =>
    at(
      'switchover',
      s.at,
      nearest(
        swap.switchovers.map((w) => w.at),
        s.at,
      ),
    ),
  );
  const bringUps = truth.bringUps.flatMap((bringUp): readonly Bounded[] => {
    const found = matching(truth.bringUps, bringUp, swap.bringUps);
    return [at('bring-up start', bringUp.start, found?.start), ...durations(bringUp, found)];
  });
  const tellsReady = sources.some((s) => s.signals.has('partner-ready'));
  const all = [...moves, ...switchovers, ...bringUps, ...(tellsReady ? [exposure(told, swap)] : [])];
  return hasHiddenSpell(told, sources, swap) ? all.map(asHidden) : all;
}

function asHidden({ kind, found }: Bounded): Bounded {
  const restsOnIt = kind === 'sync' || kind === 'exposure';
  return { kind, found: restsOnIt && found === 'outside' ? 'hidden' : found };
}

/** Whether the partner was ready, or not, for no longer in the swap than the spacing of every poll that tells of it. */
function hasHiddenSpell({ story, truth }: ToldSwap, sources: readonly Source[], { to }: Swap): boolean {
  const telling = sources.filter((s) => s.signals.has('partner-ready'));
  const shortest = spellsOf(story, null, 'partner-ready')
    .filter((s) => s.from > truth.firstRemoval && s.to < to)
    .reduce((least, s) => Math.min(least, s.to - s.from), Number.POSITIVE_INFINITY);
  return telling.every((s) => s.kind === 'poll' && shortest <= 1000 * s.spacingSeconds);
}

function isWithin(value: number, low: number, high: number): 'inside' | 'outside' {
  return value >= low - rounding && value <= high + rounding ? 'inside' : 'outside';
}

function nearest(instants: readonly Instant[], time: number): Instant | undefined {
  return [...instants].sort((a, b) => Math.abs(a.time - time) - Math.abs(b.time - time))[0];
}

/** The reported bring-up of the same half and cause, in its turn. */
function matching(
  all: readonly TrueBringUp[],
  wanted: TrueBringUp,
  reported: readonly BringUp[],
): BringUp | undefined {
  const isLike = ({ half, cause }: Pick<BringUp, 'half' | 'cause'>): boolean =>
    half === wanted.half && cause === wanted.cause;
  return reported.filter(isLike)[all.filter(isLike).indexOf(wanted)];
}

/** Sync and light of a bring-up that reached both ends; of one that did not there is no true duration. */
function durations(bringUp: TrueBringUp, found: BringUp | undefined): readonly Bounded[] {
  const of = (kind: 'sync' | 'light', time: number | null): readonly Bounded[] => {
    if (time === null) return [];
    const measure = found?.[kind];
    if (measure === undefined || measure.low === null) return [{ kind, found: 'not reported' }];
    const high = measure.censored ? Number.POSITIVE_INFINITY : (measure.high ?? Number.POSITIVE_INFINITY);
    return [{ kind, found: isWithin((time - bringUp.start) / 1000, measure.low, high) }];
  };
  return [...of('sync', bringUp.ready), ...of('light', bringUp.steady)];
}

/** Time without a ready partner from the first removal to the reported end. */
function exposure({ story, truth }: ToldSwap, swap: Swap): Bounded {
  const ready = spellsOf(story, null, 'partner-ready').filter((s) => s.value === 'no');
  const sum = ready.reduce((ms, s) => ms + overlap(s, truth.firstRemoval, swap.to), 0);
  return { kind: 'exposure', found: isWithin(sum / 1000, swap.exposure.low, swap.exposure.high) };
}
