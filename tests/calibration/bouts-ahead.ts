import type { Random } from '../../samples/random.ts';
import { boutsAhead, type PairBouts } from '../../src/fleet/bouts-ahead.ts';
import { defaultFleetLimits, yearSeconds } from '../../src/fleet/limits.ts';
import { exponential } from './draws.ts';
import type { Study, Trial } from './study.ts';

const yearMs = yearSeconds * 1000;
const usualCases = 400;

/** How bouts come: each by itself, or some of them with a storm that hits half of all pairs within an hour. */
const manners = { 'single bouts': 0, 'with two storms a year': 2 } as const;

/** The prediction for the fleet, against a further year of the same. */
export const boutsOfNextYear: Study = {
  name: 'bouts of the next year: as many as the 95 % prediction says',
  run: (random, scale) => {
    const cases = Math.max(20, Math.round(usualCases * scale));
    return [2, 20, 100].flatMap((pairs) =>
      [1, 2, 10].flatMap((years) =>
        Object.entries(manners).map(([manner, storms]) =>
          trialOf(random, { pairs, years, manner, storms, cases }),
        ),
      ),
    );
  },
};

interface Setting {
  readonly pairs: number;
  readonly years: number;
  readonly manner: string;
  /** A year. */
  readonly storms: number;
  readonly cases: number;
}

function trialOf(random: Random, setting: Setting): Trial {
  const { pairs, years, manner, cases } = setting;
  const hits = Array.from({ length: cases }).filter(() => isRight(random, setting)).length;
  return {
    setting: `${manner}, ${pairs} pairs, ${years === 1 ? 'one year' : `${years} years`}`,
    promised: { low: 0.95, high: 1 },
    hits,
    cases,
    ...(setting.storms * years > 2 || setting.storms === 0 || pairs === 2
      ? {}
      : { because: 'one or two storms in a year do not show how many the next brings' }),
  };
}

function isRight(random: Random, { pairs, years, storms }: Setting): boolean {
  const rates = Array.from({ length: pairs }, () => 0.5 + 3 * random());
  const all = rates.map((rate) => arrivals(random, rate, years + 1));
  for (const storm of arrivals(random, storms, years + 1))
    for (const own of all) if (random() < 0.5) own.push(storm + random() / 8766);
  const seen = all.map(
    (times, index): PairBouts => ({
      pair: `P${index}`,
      observed: [{ from: 0, to: years * yearMs }],
      bouts: times.filter((t) => t < years).map((t) => ({ time: t * yearMs })),
    }),
  );
  const found = boutsAhead(seen, defaultFleetLimits);
  const next = all.flat().filter((t) => t >= years && t < years + 1).length;
  return found !== null && next >= found.low && next <= found.high;
}

/** Instants of a Poisson process of so many a year, in years. */
function arrivals(random: Random, rate: number, years: number): number[] {
  const times: number[] = [];
  if (rate === 0) return times;
  for (let time = exponential(random) / rate; time < years; time += exponential(random) / rate)
    times.push(time);
  return times;
}
