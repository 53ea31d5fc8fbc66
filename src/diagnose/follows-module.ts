import type { Point } from '../vocabulary.ts';
import { type Cause, doubted, type Trouble } from './cause.ts';
import { linesBehind, placeOf, sayTally, tally, tallyDecibans } from './tally.ts';

export const followsModule: Cause = {
  meta: {
    id: 'follows-module',
    title: 'The trouble follows the module',
    kind: 'pattern',
    explains: 'A module that is itself at fault, wherever it is put.',
    shows: 'The serial fails in more than one half, and other modules are ready in the same halves.',
    needs: [['serial']],
    next: 'Set that module aside, marked with its serial, and fit another one of the same model; do not try it in a further pair.',
  },
  weigh(trouble) {
    const serial = serialOf(trouble);
    if (serial === null) return doubted([]);
    const own = trouble.observations.filter((o) => o.serial === serial);
    const failedIn = new Set(own.filter((o) => !o.ready).map(placeOf));
    const places = new Set(own.map(placeOf));
    const evidence = linesBehind(own, trouble);
    if (failedIn.size < 2) return doubted([onePlace(serial, [...places], [...failedIn], evidence)]);
    const others = trouble.observations.filter(
      (o) => o.serial !== null && o.serial !== serial && places.has(placeOf(o)),
    );
    const point: Point = {
      statement: `Module ${serial} ${sayTally(tally(own))} in ${[...places].join(' and ')}; other modules there ${sayTally(tally(others))}.`,
      evidence: linesBehind([...own, ...others], trouble),
    };
    const weight = tallyDecibans(tally(own), tally(others), trouble);
    return weight > 0 ? { decibans: weight, for: [point], against: [] } : doubted([point]);
  },
};

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
    statement: `Module ${serial} ${where}, so module and slot cannot be told apart by it.`,
    evidence,
  };
}

/** The serial of the module that does not come up; `null` if never reported. */
function serialOf({ failed, attempts }: Trouble): string | null {
  return (failed.at(-1) ?? attempts.at(-1))?.serial ?? null;
}
