import { benjaminiHochberg } from '../statistics/benjamini-hochberg.ts';
import { findingChance } from '../statistics/finding-chance.ts';
import { atLeast, type Counted, together } from '../statistics/rate-ratio.ts';
import type { Fleet, PairReview } from '../vocabulary.ts';
import type { FleetLimits } from './limits.ts';

/** One pair against the rest. */
export type Compared = Pick<PairReview, 'p' | 'standsOut'>;

/**
 * Which pairs have more bouts than chance and the rest explain, in the order given; exposure in seconds. Pairs observed for
 * too short a time are neither judged nor part of the rest: a short excerpt is mostly cut around trouble.
 *
 * Exact one-sided Poisson comparisons at the stated rate of false discoveries, made again with those found left out of the
 * rest until no further one is found, so that several bad pairs do not hide each other. Every round judges all pairs, those
 * found included, and so adjusts for all of them. A second round comes only after a pair was found, and while only bad pairs
 * are left out a sound pair is compared with a rest that is no better than the sound pairs alone: the rounds find a sound
 * pair about as seldom as one round would that knew which pairs are sound.
 */
export function comparePairs(pairs: readonly Counted[], limits: FleetLimits): readonly Compared[] {
  const judged = pairs.map(({ exposure }) => exposure >= limits.leastObservedSeconds);
  const found = new Set<number>();
  let chances: readonly (number | null)[] = pairs.map(() => null);
  for (let isMore = true; isMore; ) {
    const before = chances;
    const rest = together(pairs.filter((_, index) => judged[index] === true && !found.has(index)));
    chances = pairs.map((pair, index) => {
      if (judged[index] !== true) return null;
      // Of two pairs the sound one has nothing left to be compared with: its last comparison stands.
      return chanceOf(pair, found.has(index) ? rest : without(rest, pair)) ?? before[index] ?? null;
    });
    const adjusted = adjustedOf(chances);
    const next = [...pairs.keys()].filter((index) => (adjusted[index] ?? 1) <= limits.falseDiscovery);
    isMore = next.some((index) => !found.has(index));
    for (const index of next) found.add(index);
  }
  return chances.map((p, index) => ({ p, standsOut: p === null ? null : found.has(index) }));
}

/** The chances that there are, adjusted for their number; `null` where there is none. */
export function adjustedOf(chances: readonly (number | null)[]): readonly (number | null)[] {
  const adjusted = benjaminiHochberg(chances.filter((p) => p !== null));
  let next = 0;
  return chances.map((p) => {
    if (p === null) return null;
    next += 1;
    return adjusted[next - 1] ?? null;
  });
}

/**
 * How many of all pairs with some times the rate of the others would be found to stand out, for a pair that is observed as
 * long as the middle one. `null` where nothing was compared or no pair had a bout.
 */
export function powerOf(pairs: readonly Counted[], limits: FleetLimits): Fleet['power'] {
  const judged = pairs.filter(({ exposure }) => exposure >= limits.leastObservedSeconds);
  const { count, exposure } = together(judged);
  const inOrder = judged.map((pair) => pair.exposure).sort((a, b) => a - b);
  const usual = inOrder[Math.floor(inOrder.length / 2)];
  if (usual === undefined || judged.length < 2 || count === 0) return null;
  const rate = count / exposure;
  const { powerRatio: ratio, falseDiscovery } = limits;
  const compared = { own: rate * usual, rest: rate * (exposure - usual) };
  return { ratio, share: findingChance(compared, ratio, falseDiscovery / judged.length) };
}

function chanceOf(pair: Counted, rest: Counted): number | null {
  if (!(rest.exposure > 0)) return null;
  return atLeast(pair.count, pair.count + rest.count, pair.exposure / (pair.exposure + rest.exposure));
}

function without(all: Counted, own: Counted): Counted {
  return { count: all.count - own.count, exposure: all.exposure - own.exposure };
}
