import { ewma } from '../../../src/statistics/ewma.ts';
import { laplaceTrend } from '../../../src/statistics/laplace-trend.ts';
import { mannKendall } from '../../../src/statistics/mann-kendall.ts';
import { powerLawTrend } from '../../../src/statistics/power-law-trend.ts';
import { theilSen } from '../../../src/statistics/theil-sen.ts';
import { type CheckValue, relative } from './check-value.ts';

/** Ten failures of a reliability improvement test, watched to 1500 h. */
const failures = [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478];
const tests = 'NIST/SEMATECH e-Handbook 8.2.3.4, data of 8.4.5.2; digits as SciPy 1.10.1';
const fit = 'NIST/SEMATECH e-Handbook 8.4.5.2, printed output';

function failureValues(): readonly CheckValue[] {
  const laplace = laplaceTrend(failures, 1500);
  const power = powerLawTrend(failures, 1500);
  const computed = (
    method: string,
    what: string,
    expected: number,
    value: number | undefined,
  ): CheckValue => ({
    method,
    what,
    source: tests,
    expected,
    computed: value,
    tolerance: relative(expected, 1e-7),
  });
  const printed = (
    what: string,
    expected: number,
    value: number | null | undefined,
    tolerance: number,
  ): CheckValue => ({
    method: 'Power law',
    what,
    source: fit,
    expected,
    computed: value,
    tolerance,
  });
  return [
    computed('Laplace', 'z', -1.32694918, laplace?.z),
    computed('Laplace', 'p', 0.18452549, laplace?.p),
    computed('Military handbook', 'chi-square', 37.2280815, power?.chiSquare),
    computed('Military handbook', 'degrees of freedom', 20, power?.df),
    // Twice the lesser tail of 0.98901364 below.
    { ...computed('Military handbook', 'p', 0.02197272, power?.p), tolerance: 2e-8 },
    printed('shape', 0.483506, power?.shape, 5e-7),
    printed('scale', 0.2913003, power?.scale, 5e-8),
    printed('mean time at the end', 310.234, power?.meanTimeAtEnd, 0.0005),
  ];
}

function smoothedValues(): readonly CheckValue[] {
  const source = 'NIST/SEMATECH e-Handbook 6.3.2.4, worked example; averages as SciPy 1.10.1';
  const found = ewma(
    [
      52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6,
      52.1,
    ],
    0.3,
    50,
  );
  const averages = [
    50.6, 49.52, 50.564, 50.1848, 50.15936, 49.211552, 49.7480864, 49.8536605, 50.2575623, 50.3302936,
    50.1112055, 49.3578439, 49.5204907, 50.0543435, 49.3780405, 49.9246283, 50.7272398, 51.2290679,
    51.9403475, 51.9882433,
  ];
  const shared = { method: 'EWMA', source };
  return [
    ...averages.map((expected, index) => ({
      ...shared,
      what: `average ${index + 1}`,
      expected,
      computed: found[index],
      tolerance: relative(expected, 1e-8),
    })),
  ];
}

interface Series {
  readonly name: string;
  readonly source: string;
  readonly values: readonly number[];
  readonly times?: readonly number[];
  readonly score: number;
  readonly variance?: number;
  readonly z?: number;
  readonly p?: number;
  readonly slope: number;
  readonly limits?: readonly [number, number];
}

const series: readonly Series[] = [
  {
    name: '11 values',
    source: 'US EPA, QA/G-9S (2006), p. 109: S 22, variance 155.33, Z 1.685; digits as SciPy 1.10.1',
    values: [10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15],
    score: 22,
    variance: 155.333333,
    z: 1.68494979,
    p: 0.091998259,
    slope: 1,
    limits: [0, 2],
  },
  {
    name: '5 values',
    source: 'US EPA, QA/G-9 (2000), small sample (S from memory); slope as R 4.2.2',
    values: [5, 6, 11, 8, 10],
    score: 6,
    slope: 1.125,
  },
  {
    name: 'sulfate',
    source: 'US EPA, Unified Guidance (2009), Example 17-6: Z 5.107322, slope 26.6666667, 20 to 35.71182',
    values: [
      480, 450, 490, 520, 485, 510, 510, 530, 510, 560, 560, 540, 590, 550, 600, 700, 570, 610, 650, 620, 830,
      720, 590,
    ],
    times: [
      89.6, 89.8, 90.1, 90.3, 90.6, 90.8, 91.1, 91.3, 91.6, 91.8, 92.1, 92.6, 93.1, 93.6, 94.1, 94.6, 95.1,
      95.6, 95.8, 96.1, 96.3, 96.6, 96.8,
    ],
    score: 194,
    variance: 1428,
    z: 5.1073216,
    p: 3.2675736e-7,
    slope: 26.6666667,
    limits: [20, 35.711824],
  },
  {
    name: 'three ties',
    source: 'constructed, three groups of ties; computed with SciPy 1.10.1 and R 4.2.2',
    values: [17, 14, 39, 16, 39, 14, 14, 39, 17, 39],
    score: 7,
    variance: 111.666667,
    z: 0.567792268,
    p: 0.57017603,
    slope: 0,
  },
];

function seriesValues(): readonly CheckValue[] {
  return series.flatMap(({ name, source, values, times, ...expected }) => {
    const trend = mannKendall(values);
    const slope = theilSen(values.map((value, index) => ({ time: times?.[index] ?? index, value })));
    const row = (
      method: string,
      what: string,
      value: number | undefined,
      found: number | null | undefined,
    ) =>
      value === undefined
        ? []
        : [
            {
              method,
              what: `${name}, ${what}`,
              source,
              expected: value,
              computed: found,
              tolerance: relative(value, 1e-6),
            },
          ];
    return [
      ...row('Mann-Kendall', 'S', expected.score, trend?.score),
      ...row('Mann-Kendall', 'variance', expected.variance, trend?.variance),
      ...row('Mann-Kendall', 'Z', expected.z, trend?.z),
      ...row('Mann-Kendall', 'p', expected.p, trend?.p),
      ...row('Theil-Sen', 'slope', expected.slope, slope?.slope),
      ...row('Theil-Sen', 'low', expected.limits?.[0], slope?.low),
      ...row('Theil-Sen', 'high', expected.limits?.[1], slope?.high),
    ];
  });
}

/** Trends of events and of values, and the moving average. */
export const trendValues: readonly CheckValue[] = [
  ...failureValues(),
  ...smoothedValues(),
  ...seriesValues(),
];
