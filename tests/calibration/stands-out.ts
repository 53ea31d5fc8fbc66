import type { Random } from '../../samples/random.ts';
import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import { type LossRate, rateLosses } from '../../src/fleet/rate-losses.ts';
import {
  countOf,
  type MadeFleet,
  madeFleet,
  patterns,
  settingOf,
  sizes,
  sound,
  yearDays,
} from './made-losses.ts';
import type { Study, Trial } from './study.ts';

const atMost5 = { low: 0, high: 0.05 };

function ratesOf(random: Random, made: MadeFleet): readonly LossRate[] {
  return rateLosses(madeFleet(random, made), defaultFleetLimits).rates;
}

/** Fewer fleets where they are large: as many pairs in all. */
function casesOf(pairs: number, scale: number): number {
  return Math.ceil(scale * Math.min(2000, 40_000 / pairs));
}

export const standsOut: Study = {
  name: 'stands out: sound fleets with a pair said to',
  run: (random, scale) =>
    patterns.flatMap((pattern) =>
      sizes.map(([pairs, years]): Trial => {
        const cases = casesOf(pairs, scale);
        const hits = countOf(cases, () =>
          ratesOf(random, sound(pairs, years, pattern)).some((rate) => rate.standsOut),
        );
        return { setting: settingOf(pattern, pairs, years), promised: atMost5, hits, cases };
      }),
    ),
};

/** Bad pairs of all, and how many times the rate of the others they have. */
const troubled = [
  [1, 8, 6],
  [4, 8, 4],
  [4, 8, 8],
  [5, 20, 4],
  [20, 100, 4],
] as const;

export const falseOnes: Study = {
  name: 'stands out: false ones among those said to',
  run: (random, scale) =>
    troubled.map(([bad, pairs, times]): Trial => {
      let [falsely, said] = [0, 0];
      const perYear = Array.from({ length: pairs }, (_, index) => (index < bad ? 2 * times : 2));
      const made: MadeFleet = { days: 2 * yearDays, perYear, pattern: 'Poisson' };
      for (let run = 0; run < casesOf(pairs, scale); run += 1)
        for (const [index, rate] of ratesOf(random, made).entries()) {
          if (rate.standsOut !== true) continue;
          said += 1;
          if (index >= bad) falsely += 1;
        }
      const setting = `${bad} of ${pairs} pairs with ${times} times the rate, 2 years`;
      return { setting, promised: atMost5, hits: falsely, cases: said };
    }),
};

/** What the sentence says of a pair with three times the rate, against how often such a pair is found. */
export const power: Study = {
  name: 'stands out: a pair with three times the rate is found as often as said',
  run: (random, scale) =>
    sizes
      .filter(([pairs]) => pairs <= 20)
      .map(([pairs, years]): Trial => {
        const cases = casesOf(pairs, scale);
        const of = sound(pairs, years, 'Poisson');
        // Fleets in which a pair is found say none.
        const said = Array.from({ length: 50 }).flatMap(
          () => rateLosses(madeFleet(random, of), defaultFleetLimits).power?.share ?? [],
        );
        const promised = said.reduce((sum, share) => sum + share, 0) / said.length;
        const made = { ...of, perYear: of.perYear.map((rate, index) => (index === 0 ? 3 * rate : rate)) };
        const hits = countOf(cases, () => ratesOf(random, made)[0]?.standsOut === true);
        // The rate of the others is estimated.
        const range = { low: promised - 0.03, high: Math.min(1, promised + 0.03) };
        return { setting: settingOf('Poisson', pairs, years), promised: range, hits, cases };
      }),
};
