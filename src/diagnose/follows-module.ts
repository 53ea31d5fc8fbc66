import type { Point } from '../vocabulary.ts';
import { type Cause, capped, doubted, type Trouble } from './cause.ts';
import type { Observation } from './observations.ts';
import { lastWasReady, linesBehind, placeOf, sayTally, tally, tallyDecibans } from './tally.ts';

/**
 * Least evidence with which a good engineer would name it: the swap test. The module failed at least once in each of two places, was
 * never ready since, and in each of them another module was ready, its last time there included. Short of that the counts alone
 * weigh, by Fisher's exact test. Times before its first failure do not count: it was whole then. Common practice, no source.
 */
export const followsModule: Cause = {
  meta: {
    id: 'follows-module',
    title: 'The trouble follows the module',
    kind: 'place',
    explains: 'A faulty module, in any slot.',
    shows: 'The serial fails in more than one half, and other modules are ready in the same halves.',
    needs: [['serial']],
    next: 'Set that module aside, marked with its serial, and fit another one of the same model; do not try it in a further pair.',
  },
  weigh(trouble) {
    const serial = serialOf(trouble);
    if (serial === null) return doubted([]);
    const all = trouble.observations.filter((o) => o.serial === serial);
    const since = Math.min(...all.filter((o) => !o.ready).map((o) => o.at));
    const own = all.filter((o) => o.at >= since);
    const failedIn = new Set(own.filter((o) => !o.ready).map(placeOf));
    if (failedIn.size < 2) {
      const places = new Set(all.map(placeOf));
      return doubted([onePlace(serial, [...places], [...failedIn], linesBehind(all, trouble))]);
    }
    const places = new Set(own.map(placeOf));
    const others = trouble.observations.filter(
      (o) => o.serial !== null && o.serial !== serial && places.has(placeOf(o)),
    );
    const point: Point = {
      statement: `Module ${serial} ${sayTally(tally(own))} in ${[...places].join(' and ')}; other modules there ${sayTally(tally(others))}.`,
      evidence: linesBehind([...own, ...others], trouble),
    };
    const tested = isSwapTested(own, others, failedIn) ? trouble.limits.swapTestDecibans : 0;
    const weight = tested + tallyDecibans(tally(own), tally(others), trouble);
    return weight > 0
      ? { decibans: capped(weight, trouble.limits), for: [point], against: [] }
      : doubted([point]);
  },
};

/** It was never ready, and in every place where it failed another module was ready when last tried there. */
function isSwapTested(
  own: readonly Observation[],
  others: readonly Observation[],
  failedIn: ReadonlySet<string>,
): boolean {
  return (
    own.every((o) => !o.ready) &&
    [...failedIn].every((place) => lastWasReady(others.filter((o) => placeOf(o) === place)))
  );
}

function onePlace(
  serial: string,
  places: readonly string[],
  failedIn: readonly string[],
  evidence: Point['evidence'],
): Point {
  const where =
    places.length < 2
      ? `was seen in ${places[0] ?? 'no half'} only`
      : `failed in ${failedIn[0] ?? 'no half'} only`;
  return {
    statement: `Module ${serial} ${where}, so module and slot cannot be separated by it.`,
    evidence,
  };
}

/** The serial of the module that does not come up; `null` if never reported. */
function serialOf({ failed, attempts }: Trouble): string | null {
  return (failed.at(-1) ?? attempts.at(-1))?.serial ?? null;
}
