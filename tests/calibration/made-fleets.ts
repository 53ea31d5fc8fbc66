import type { Random } from '../../samples/random.ts';
import type { PairTimeline, Signal } from '../../src/vocabulary.ts';
import {
  exponential,
  hourMs,
  lossAt,
  type MadeChange,
  type MadeLoss,
  madeTimeline,
  poissonCount,
  poissonTimes,
} from './made-timelines.ts';

/** How losses and other changes come, having nothing to do with each other but the times at which all is restless. */
export const characters = ['Poisson', 'bursty', 'stormy'] as const;
export type Character = (typeof characters)[number];

export interface MadeFleet {
  readonly character: Character;
  readonly pairs: number;
  readonly years: number;
}

/** What changes beside the losses in a made log. */
const kinds: readonly (readonly [Signal, string])[] = [
  ['link-a', 'down'],
  ['link-a', 'up'],
  ['supply', 'fault'],
];

/**
 * A fleet in which nothing brings the losses but chance. `Poisson`: four losses a year and pair. `bursty`: two troubles a year
 * and pair, each of which brings losses some twenty minutes apart, nine on the average. `stormy`: every other month an hour in which
 * all pairs lose their partner twice on the average, beside two losses a year of their own. Changes come twenty times a year of
 * each kind, and in a trouble or storm five to ten times an hour.
 */
export function madeFleet(random: Random, { character, pairs, years }: MadeFleet): readonly PairTimeline[] {
  const storms = character === 'stormy' ? poissonTimes(random, 6, years) : [];
  return Array.from({ length: pairs }, (_, index) => {
    const restless =
      character === 'bursty'
        ? poissonTimes(random, 2, years).map((from) => burst(random, from))
        : storms.map((from) => storm(random, from));
    const alone = character === 'Poisson' ? 4 : character === 'stormy' ? 2 : 0;
    const losses = [
      ...restless.flatMap((r) => r.losses),
      ...poissonTimes(random, alone, years).map((time) => lossAt(random, time)),
    ];
    const changes = [
      ...restless.flatMap((r) => r.changes),
      ...kinds.flatMap(([signal, value]) =>
        poissonTimes(random, 20, years).map((time) => ({ time, half: 'B', signal, value })),
      ),
    ];
    return madeTimeline(`P${index + 1}`, years, losses, changes);
  });
}

interface Restless {
  readonly losses: readonly MadeLoss[];
  readonly changes: readonly MadeChange[];
}

function burst(random: Random, from: number): Restless {
  const losses = [lossAt(random, from)];
  let time = from;
  while (random() < 8 / 9) {
    time += exponential(random, hourMs / 3);
    losses.push(lossAt(random, time));
  }
  return { losses, changes: changesBetween(random, from - hourMs / 2, time + hourMs / 2, 5) };
}

function storm(random: Random, from: number): Restless {
  const losses = Array.from({ length: poissonCount(random, 2) }, () =>
    lossAt(random, from + random() * hourMs),
  );
  return { losses, changes: changesBetween(random, from, from + hourMs, 10) };
}

function changesBetween(random: Random, from: number, to: number, perHour: number): readonly MadeChange[] {
  return kinds.flatMap(([signal, value]) =>
    Array.from({ length: poissonCount(random, (perHour * (to - from)) / hourMs) }, () => ({
      time: from + random() * (to - from),
      half: 'B',
      signal,
      value,
    })),
  );
}
