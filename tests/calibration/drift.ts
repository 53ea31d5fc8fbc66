import type { Random } from '../../samples/random.ts';
import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import { syncDrifts } from '../../src/fleet/over-time.ts';
import type { BringUp } from '../../src/vocabulary.ts';
import { madeBringUp } from '../support/made-bring-ups.ts';
import { countHits } from './count-hits.ts';
import { hourMs } from './made-timelines.ts';
import type { Study, Trial } from './study.ts';
import { type TimeShape, timeShapes } from './sync-series.ts';

const settings: readonly (readonly [TimeShape, number, number, number])[] = [
  ['bell-shaped times', 1, 20, 1000],
  ['skewed times', 1, 20, 1000],
  ['whole 10 s', 1, 20, 1000],
  ['skewed times', 5, 60, 150],
  ['whole 10 s', 5, 60, 150],
  ['skewed times', 20, 30, 60],
  ['skewed times', 1, 500, 100],
];

/** Sync times that do not change, group by group: any average outside its limits is a false word. */
export const driftStudy: Study = {
  name: 'drift: sound fleets with any average outside its limits',
  run: (random, scale) => [
    ...settings.map(([shape, groups, count, most]): Trial => {
      const cases = Math.ceil(most * scale);
      return {
        setting: `${shape}, ${groups === 1 ? 'a group' : `${groups} groups`} of ${count}`,
        promised: { low: 0, high: defaultFleetLimits.ewma.significance },
        hits: countHits(cases, () => drifts(madeGroups(random, shape, groups, count, 0))),
        cases,
      };
    }),
    {
      setting: 'skewed times, 40, 60 s longer later: found',
      promised: { low: 0.95, high: 1 },
      hits: countHits(Math.ceil(100 * scale), () => drifts(madeGroups(random, 'skewed times', 1, 40, 60))),
      cases: Math.ceil(100 * scale),
    },
  ],
};

function drifts(attempts: readonly BringUp[]): boolean {
  const found = syncDrifts(attempts, (a) => a.firmware, defaultFleetLimits);
  return found.some(({ points }) => points.some((p) => p.isOutside));
}

/** In each group times a day apart, those of its second half so many seconds longer. */
function madeGroups(
  random: Random,
  shape: TimeShape,
  groups: number,
  count: number,
  later: number,
): readonly BringUp[] {
  return Array.from({ length: groups * count }, (_, index) => {
    const turn = Math.floor(index / groups);
    const seconds = timeShapes[shape](random) + (turn < count / 2 ? 0 : later);
    return madeBringUp({ firmware: `6.${index % groups}`, start: turn * 24 * hourMs, seconds });
  });
}
