import { intervalLogRank } from '../../../src/statistics/interval-log-rank.ts';
import { permutationChance } from '../../../src/statistics/permutation-chance.ts';
import { type Between, turnbull } from '../../../src/statistics/turnbull.ts';
import type { CheckValue } from './check-value.ts';

const source =
  'Finkelstein and Wolfe (1985), cosmesis data; Fay and Shaw, Weighted Logrank Tests for Interval Censored Data, sections 4.1, 4.2';

function between(bounds: readonly (readonly [number, number])[]): readonly Between[] {
  return bounds.map(([low, high]) => ({ low, high }));
}

const radiation = between([
  [45, Infinity],
  [6, 10],
  [0, 7],
  [46, Infinity],
  [46, Infinity],
  [7, 16],
  [17, Infinity],
  [7, 14],
  [37, 44],
  [0, 8],
  [4, 11],
  [15, Infinity],
  [11, 15],
  [22, Infinity],
  [46, Infinity],
  [46, Infinity],
  [25, 37],
  [46, Infinity],
  [26, 40],
  [46, Infinity],
  [27, 34],
  [36, 44],
  [46, Infinity],
  [36, 48],
  [37, Infinity],
  [40, Infinity],
  [17, 25],
  [46, Infinity],
  [11, 18],
  [38, Infinity],
  [5, 12],
  [37, Infinity],
  [0, 5],
  [18, Infinity],
  [24, Infinity],
  [36, Infinity],
  [5, 11],
  [19, 35],
  [17, 25],
  [24, Infinity],
  [32, Infinity],
  [33, Infinity],
  [19, 26],
  [37, Infinity],
  [34, Infinity],
  [36, Infinity],
]);

/** Radiation and chemotherapy: the second group of the same data, 48 women, as read in one public copy; the figures printed for both groups confirm it. */
const both = between([
  [8, 12],
  [0, 5],
  [30, 34],
  [0, 22],
  [5, 8],
  [13, Infinity],
  [24, 31],
  [12, 20],
  [10, 17],
  [17, 27],
  [11, Infinity],
  [8, 21],
  [17, 23],
  [33, 40],
  [4, 9],
  [24, 30],
  [31, Infinity],
  [11, Infinity],
  [16, 24],
  [13, 39],
  [14, 19],
  [13, Infinity],
  [19, 32],
  [4, 8],
  [11, 13],
  [34, Infinity],
  [34, Infinity],
  [16, 20],
  [13, Infinity],
  [30, 36],
  [18, 25],
  [16, 24],
  [18, 24],
  [17, 26],
  [35, Infinity],
  [16, 60],
  [32, Infinity],
  [15, 22],
  [35, 39],
  [23, Infinity],
  [11, 17],
  [21, Infinity],
  [44, 48],
  [22, 32],
  [11, 20],
  [14, 17],
  [10, 35],
  [48, Infinity],
]);

/** From, to, probability as printed; the last never ended within the study (46 to 48 is where it was last seen). */
const masses: readonly (readonly [number, number, number])[] = [
  [4, 5, 0.0463468],
  [6, 7, 0.0333634],
  [7, 8, 0.0886674],
  [11, 12, 0.0707529],
  [24, 25, 0.0926458],
  [33, 34, 0.0817858],
  [38, 40, 0.12088],
  [46, 48, 0.465558],
];

function turnbullValues(): readonly CheckValue[] {
  const { places } = turnbull(radiation);
  const held = places.filter(({ probability }) => probability > 1e-4);
  const row = (
    what: string,
    expected: number,
    computed: number | undefined,
    tolerance: number,
  ): CheckValue => ({
    method: 'Turnbull',
    what,
    source,
    expected,
    computed,
    tolerance,
  });
  return [
    row('places that hold anything', masses.length, held.length, 0),
    ...masses.flatMap(([low, high, probability], index) => [
      row(`${low} to ${high}, low`, low, held[index]?.low, 0),
      row(`${low} to ${high}`, probability, held[index]?.probability, 2e-5),
    ]),
    ...[
      [5, 0.9537],
      [8, 0.8316],
      [12, 0.7609],
      [25, 0.6682],
      [34, 0.5864],
      [40, 0.4656],
    ].map(([after = 0, expected = 0]) =>
      row(`left after ${after}`, expected, held.find(({ high }) => high === after)?.survivingAfter, 6e-5),
    ),
  ];
}

function intervalLogRankValues(): readonly CheckValue[] {
  const found = intervalLogRank([
    [...radiation.map((time) => ({ ...time, group: 'a' })), ...both.map((time) => ({ ...time, group: 'b' }))],
  ]);
  const row = (
    what: string,
    expected: number,
    computed: number | undefined,
    tolerance: number,
  ): CheckValue => ({
    method: 'Log-rank, intervals',
    what,
    source,
    expected,
    computed,
    tolerance,
  });
  return [
    row('size of Z', 2.6839, Math.sqrt(found?.chiSquare ?? Number.NaN), 5e-5),
    row('p', 0.007277, found?.p, 5e-7),
    row('score of radiation', -9.944182, found?.groups[0]?.score, 5e-5),
  ];
}

/**
 * Of the 20 ways to deal the scores 1, 2, 3 and -1, -2, -3 in two hands of three, two lie as far apart as these: 0.1.
 */
function permutationValues(): readonly CheckValue[] {
  const scored = [1, 2, 3, -1, -2, -3].map((score) => ({ group: score > 0 ? 'a' : 'b', score }));
  return [
    {
      method: 'Log-rank, dealt out',
      what: 'three against three',
      source: 'constructed: 2 of 20 deals; 20,000 deals leave 0.01',
      expected: 0.1,
      computed: permutationChance(scored, { seed: 1, rounds: 20_000 }),
      tolerance: 0.01,
    },
  ];
}

/** Turnbull's estimate and the log-rank test on intervals. */
export const intervalValues: readonly CheckValue[] = [
  ...turnbullValues(),
  ...intervalLogRankValues(),
  ...permutationValues(),
];
