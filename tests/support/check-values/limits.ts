import { benjaminiHochberg } from '../../../src/statistics/benjamini-hochberg.ts';
import { bootstrap } from '../../../src/statistics/bootstrap.ts';
import { poissonLimits } from '../../../src/statistics/poisson-limits.ts';
import { seededRandom } from '../../../src/statistics/seeded-random.ts';
import { upperToleranceLimit } from '../../../src/statistics/tolerance-limit.ts';
import { type CheckValue, relative } from './check-value.ts';

const garwood = 'Garwood, Biometrika 28 (1936), table of exact limits; digits as R 4.2.2 qchisq';

/** Confidence; then count, low, high. */
const limits: readonly (readonly [number, readonly (readonly [number, number, number])[]])[] = [
  [
    0.95,
    [
      [0, 0, 3.68887945],
      [1, 0.025317808, 5.57164339],
      [2, 0.242209279, 7.22468767],
      [3, 0.618672123, 8.76727307],
      [4, 1.08986537, 10.2415887],
      [5, 1.62348639, 11.6683321],
      [6, 2.20189425, 13.059474],
      [7, 2.81436305, 14.4226754],
      [8, 3.45383218, 15.7631892],
      [9, 4.1153731, 17.0848035],
      [10, 4.7953887, 18.390356],
    ],
  ],
  [
    0.99,
    [
      [0, 0, 5.29831737],
      [1, 0.00501254182, 7.4301295],
      [5, 1.07792824, 14.1497594],
      [10, 3.71692213, 21.3978275],
      [20, 10.3532677, 34.6679987],
    ],
  ],
];

const large = 'the same equation; computed with SciPy 1.17.1, chi2.ppf / 2';
/** Count, low, high at 0.95. */
const largeLimits: readonly (readonly [number, number, number])[] = [
  [999, 938.0040185617676, 1062.9211512248878],
  [1000, 938.9730184076952, 1063.952136016302],
  [1500, 1425.0424682598964, 1577.877047118903],
  [10_000, 9804.952467260184, 10197.951624661473],
  [100_000, 99381.15266374472, 100621.74473974388],
  [1_000_000, 998040.9833402939, 1001961.9119454322],
];

function poissonValues(): readonly CheckValue[] {
  const row = (what: string, source: string, expected: number, computed: number | undefined): CheckValue => ({
    method: 'Poisson limits',
    what,
    source,
    expected,
    computed,
    tolerance: relative(expected, 1e-7),
  });
  const manual = 'R 4.2.2, manual of poisson.test, first example (137 in 24.19893)';
  const rate = poissonLimits({ count: 137, exposure: 24.19893 });
  return [
    ...limits.flatMap(([confidence, rows]) =>
      rows.flatMap(([count, low, high]) => {
        const found = poissonLimits({ count, exposure: 1 }, confidence);
        const name = `${count} at ${confidence}`;
        return [
          row(`${name}, low`, garwood, low, found?.low),
          row(`${name}, high`, garwood, high, found?.high),
        ];
      }),
    ),
    ...largeLimits.flatMap(([count, low, high]) => {
      const found = poissonLimits({ count, exposure: 1 });
      return [
        row(`${count} at 0.95, low`, large, low, found?.low),
        row(`${count} at 0.95, high`, large, high, found?.high),
      ];
    }),
    row('rate', manual, 5.66140734, rate?.value),
    row('rate, low', manual, 4.7531248, rate?.low),
    row('rate, high', manual, 6.69270933, rate?.high),
  ];
}

/** Called at 5 %: the first four. By hand: 0.0095 * 15 / 4 = 0.035625; 0.0201 * 15 / 5 = 0.0603. */
function discoveryValues(): readonly CheckValue[] {
  const source =
    'Benjamini and Hochberg (1995), section 4, 15 comparisons, four called (section and p-values from memory)';
  const adjusted = benjaminiHochberg([
    0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
    0.759, 1,
  ]);
  const shared = { method: 'Benjamini-Hochberg', source };
  return [
    {
      ...shared,
      what: 'called',
      expected: 4,
      computed: adjusted.filter((p) => p <= 0.05).length,
      tolerance: 0,
    },
    { ...shared, what: 'fourth', expected: 0.035625, computed: adjusted[3], tolerance: 1e-12 },
    { ...shared, what: 'fifth', expected: 0.0603, computed: adjusted[4], tolerance: 1e-12 },
  ];
}

function upTo(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index + 1);
}

/** Coverage, confidence, least sample. */
const samples: readonly (readonly [number, number, number])[] = [
  [0.9, 0.9, 22],
  [0.9, 0.95, 29],
  [0.95, 0.9, 45],
  [0.95, 0.95, 59],
  [0.99, 0.95, 299],
];

function toleranceValues(): readonly CheckValue[] {
  const handbook = 'NIST/SEMATECH e-Handbook 7.2.6.4; Wilks (1941)';
  const guidance = 'US EPA, Unified Guidance (2009), Example 17-4: the largest of 24 covers 88.26538 %';
  const row = (
    what: string,
    source: string,
    expected: number | null,
    computed: number | null,
  ): CheckValue => ({
    method: 'Tolerance limit',
    what,
    source,
    expected,
    computed,
    tolerance: 0,
  });
  const largestOf24 = (coverage: number): number | null =>
    upperToleranceLimit(upTo(24), { coverage, confidence: 0.95 }).value;
  return [
    ...samples.flatMap(([coverage, confidence, needed]) => {
      const name = `${coverage}/${confidence}`;
      const limit = (count: number): number | null =>
        upperToleranceLimit(upTo(count), { coverage, confidence }).value;
      return [
        row(`${name}, sample`, handbook, needed, upperToleranceLimit([], { coverage, confidence }).needed),
        row(`${name}, of that sample`, handbook, needed, limit(needed)),
        row(`${name}, of one fewer`, handbook, null, limit(needed - 1)),
      ];
    }),
    row('24, coverage 0.8826537', guidance, 24, largestOf24(0.8826537)),
    row('24, coverage 0.8826539', guidance, null, largestOf24(0.8826539)),
  ];
}

/** Of ten values, half 1: the sum drawn is binomial (10, 1/2); P[<= 2] = 56/1024, P[<= 3] = 176/1024, the other side alike. */
function chanceValues(): readonly CheckValue[] {
  const next = seededRandom(1);
  const [last] = upTo(10_000).map(next).slice(-1);
  const sum = (drawn: readonly number[]): number => drawn.reduce((total, value) => total + value, 0);
  const found = bootstrap([0, 0, 0, 0, 0, 1, 1, 1, 1, 1], sum, {
    seed: 20_261_125,
    rounds: 10_000,
    confidence: 0.8,
  });
  const shared = { method: 'Bootstrap', source: 'binomial distribution, by hand', tolerance: 0 };
  return [
    {
      method: 'Seeded generator',
      what: '10000th from 1',
      source: 'ISO/IEC 14882 (C++), predefined generators: minstd_rand (from memory)',
      expected: 399_268_537,
      computed: last,
      tolerance: 0,
    },
    { ...shared, what: '80 %, low', expected: 3, computed: found?.low },
    { ...shared, what: 'middle', expected: 5, computed: found?.median },
    { ...shared, what: '80 %, high', expected: 7, computed: found?.high },
  ];
}

/** Limits of rates, of many comparisons, of coverage, and by chance. */
export const limitValues: readonly CheckValue[] = [
  ...poissonValues(),
  ...discoveryValues(),
  ...toleranceValues(),
  ...chanceValues(),
];
