import type { Random } from '../../samples/random.ts';
import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import { lossesByGroup } from '../../src/fleet/loss-groups.ts';
import type { LossHistory } from '../../src/fleet/pair-figures.ts';
import type { Fleet } from '../../src/vocabulary.ts';
import { countOf, madeLosses, madePair, type Pattern, patterns, yearDays } from './made-losses.ts';
import type { Study, Trial } from './study.ts';

type Grouped = Pick<Fleet, 'lossGroups' | 'lossRatios'>;

/** Pairs of which each gets another firmware on a day of its own, which changes its rate by a factor. Their own rates differ: 1 to 6 a year. */
function changing(random: Random, pairs: number, pattern: Pattern, factor = 1): readonly LossHistory[] {
  const days = 2 * yearDays;
  const own = Array.from({ length: pairs }, () => 1 + 5 * random());
  const early = madeLosses(random, { days, perYear: own, pattern });
  const late = madeLosses(random, { days, perYear: own.map((rate) => rate * factor), pattern });
  return own.map((_, index) => {
    const day = days * (0.2 + 0.6 * random());
    const losses = [
      ...(early[index] ?? []).filter((loss) => loss < day),
      ...((factor === 1 ? early : late)[index] ?? []).filter((loss) => loss >= day),
    ];
    return madePair(`P${index + 1}`, days, losses, [
      { day: 0, firmware: '6.2.0' },
      { day, firmware: '6.4.1' },
    ]);
  });
}

function grouped(fleet: readonly LossHistory[]): Grouped {
  return lossesByGroup(fleet, 'firmware', defaultFleetLimits);
}

const sizes = [2, 8, 20, 100];

function casesOf(pairs: number, scale: number): number {
  return Math.ceil(scale * Math.min(1000, 20_000 / pairs));
}

function overSizes(name: string, isSaid: (found: Grouped) => boolean): Study {
  return {
    name,
    run: (random, scale) =>
      patterns.flatMap((pattern) =>
        sizes.map((pairs): Trial => {
          const cases = casesOf(pairs, scale);
          const hits = countOf(cases, () => isSaid(grouped(changing(random, pairs, pattern))));
          return {
            setting: `${pattern} losses, ${pairs} pairs`,
            promised: { low: 0, high: 0.05 },
            hits,
            cases,
          };
        }),
      ),
  };
}

export const groupsDiffer: Study = overSizes(
  'groups of losses: firmware without effect said to differ',
  ({ lossRatios }) => lossRatios.some((ratio) => ratio.differs),
);

/** Half of the pairs run the one firmware all the time, half the other; every pair has its own rate, 1 to 6 a year. */
export const groupsApart: Study = {
  name: 'groups of losses: firmware that no pair changed, without effect, said to differ',
  run: (random, scale) =>
    patterns.flatMap((pattern) =>
      [4, 8, 20, 100].map((pairs): Trial => {
        const days = 2 * yearDays;
        const cases = casesOf(pairs, scale);
        const hits = countOf(cases, () => {
          const perYear = Array.from({ length: pairs }, () => 1 + 5 * random());
          const fleet = madeLosses(random, { days, perYear, pattern }).map((losses, index) =>
            madePair(`P${index + 1}`, days, losses, [
              { day: 0, firmware: index % 2 === 0 ? '6.2.0' : '6.4.1' },
            ]),
          );
          return grouped(fleet).lossRatios.some((ratio) => ratio.differs);
        });
        const setting = `${pattern} losses, ${pairs} pairs`;
        return { setting, promised: { low: 0, high: 0.05 }, hits, cases };
      }),
    ),
};

export const groupChanges: Study = overSizes(
  'groups of losses: firmware of one rate said to have changed',
  ({ lossGroups }) => lossGroups.some((group) => group.change !== null),
);

/** The second firmware has twice the rate. */
export const ratioLimits: Study = {
  name: 'groups of losses: limits of the ratio that hold it',
  run: (random, scale) =>
    sizes.map((pairs): Trial => {
      const told = Array.from({ length: casesOf(pairs, scale) })
        .flatMap(() => [...grouped(changing(random, pairs, 'Poisson', 2)).lossRatios])
        .flatMap(({ group, ratio: { low, high } }) =>
          low === null || high === null ? [] : [{ low, high, truth: group === '6.4.1' ? 2 : 1 / 2 }],
        );
      const hits = told.filter(({ low, high, truth }) => low <= truth && high >= truth).length;
      return {
        setting: `Poisson losses, ${pairs} pairs, twice the rate`,
        promised: { low: 0.94, high: 0.97 },
        hits,
        cases: told.length,
      };
    }),
};

/** The mean number after a year in which all pairs are watched; every pair has its own rate, 1 to 6 a year. Where limits are told. */
export const curveLimits: Study = {
  name: 'groups of losses: limits of the mean cumulative function that hold it, after a year',
  run: (random, scale) =>
    patterns.flatMap((pattern) =>
      [4, 8, 20, 100].flatMap((pairs): readonly Trial[] => {
        const told = Array.from({ length: casesOf(pairs, scale) }).flatMap(() => {
          const last = grouped(watched(random, pairs, pattern)).lossGroups[0]?.curve.at(-1);
          return last === undefined || last.low === null || last.high === null
            ? []
            : [{ low: last.low, high: last.high }];
        });
        // Half the stormy troubles strike four in five pairs.
        const mean = pattern === 'stormy' ? 3.5 * (0.5 + 0.5 * 0.8) : 3.5;
        const hits = told.filter(({ low, high }) => low <= mean && high >= mean).length;
        // Pairs that are struck together are told no limits.
        if (told.length < fewestTold) return [];
        const setting = `${pattern} losses, ${pairs} pairs`;
        const trial = { setting, promised: { low: 0.93, high: 0.97 }, hits, cases: told.length };
        return [pattern === 'stormy' ? { ...trial, because } : trial];
      }),
    ),
};

const because = 'told only where hardly a storm came that year, and what has not come cannot be counted';
const fewestTold = 20;

function watched(random: Random, pairs: number, pattern: Pattern): readonly LossHistory[] {
  const perYear = Array.from({ length: pairs }, () => 1 + 5 * random());
  return madeLosses(random, { days: yearDays, perYear, pattern }).map((losses, index) =>
    madePair(`P${index + 1}`, yearDays, losses, [{ day: 0, firmware: '6.2.0' }]),
  );
}
