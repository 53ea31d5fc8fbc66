import { aalenJohansen, incidenceQuantile, type Watched } from '../../../src/statistics/aalen-johansen.ts';
import { type GroupTime, logRank } from '../../../src/statistics/log-rank.ts';
import { type CheckValue, relative } from './check-value.ts';

const freireich =
  'Freireich et al. (1963), remission data; Klein and Moeschberger, Survival Analysis, Table 4.1; digits as R 4.2.2 survival 3.5-3';
const removals = 'NIST/SEMATECH e-Handbook 8.2.1.5, worked example; digits as R 4.2.2 survival 3.5-3';
const printout = 'NIST/SEMATECH e-Handbook 8.4.1, printed output (four decimals)';

function watched(seconds: readonly number[], ended: readonly number[]): readonly Watched[] {
  return seconds.map((time, index) => ({ seconds: time, end: ended[index] === 0 ? 'censored' : 'ended' }));
}

const treated = watched(
  [6, 6, 6, 6, 7, 9, 10, 10, 11, 13, 16, 17, 19, 20, 22, 23, 25, 32, 32, 34, 35],
  [1, 1, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 0, 0, 0],
);
const placebo = watched(
  [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23],
  [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1],
);
const withRemovals = watched(
  [10, 32, 56, 98, 122, 181, 50, 100, 125, 150, 200, 200, 200, 200, 200, 200, 200, 200, 200, 200],
  [1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
);
const toFiveHundred = watched(
  [55, 187, 216, 240, 244, 335, 361, 373, 375, 386, 500, 500, 500, 500, 500, 500, 500, 500, 500, 500],
  [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
);

/** Time and the share left. */
const curves: readonly (readonly [
  string,
  readonly Watched[],
  string,
  number,
  readonly (readonly [number, number])[],
])[] = [
  [
    '6-MP',
    treated,
    freireich,
    1e-7,
    [
      [6, 0.857142857],
      [7, 0.806722689],
      [10, 0.752941176],
      [13, 0.690196078],
      [16, 0.62745098],
      [22, 0.537815126],
      [23, 0.448179272],
    ],
  ],
  [
    'placebo',
    placebo,
    freireich,
    1e-7,
    [
      [1, 0.904761905],
      [2, 0.80952381],
      [3, 0.761904762],
      [4, 0.666666667],
      [5, 0.571428571],
      [8, 0.380952381],
      [11, 0.285714286],
      [12, 0.19047619],
      [15, 0.142857143],
      [17, 0.0952380952],
      [22, 0.0476190476],
      [23, 0],
    ],
  ],
  [
    'removals',
    withRemovals,
    removals,
    1e-7,
    [
      [10, 0.95],
      [32, 0.9],
      [56, 0.847058824],
      [98, 0.794117647],
      [122, 0.737394958],
      [181, 0.670359053],
    ],
  ],
  [
    'to 500 h',
    toFiveHundred,
    printout,
    5.1e-5,
    [
      [55, 0.95],
      [187, 0.9],
      [216, 0.85],
      [240, 0.8],
      [244, 0.75],
      [335, 0.7],
      [361, 0.65],
      [373, 0.6],
      [375, 0.55],
      [386, 0.5],
    ],
  ],
];

function curveValues(): readonly CheckValue[] {
  return curves.flatMap(([name, times, source, tolerance, rows]) => {
    const steps = aalenJohansen(times);
    const row = (seconds: number, expected: number): CheckValue => ({
      method: 'Kaplan-Meier',
      what: `${name}, after ${seconds}`,
      source,
      expected,
      computed: steps.find((step) => step.seconds === seconds)?.surviving,
      tolerance,
    });
    return rows.map(([seconds, expected]) => row(seconds, expected));
  });
}

function quantileValues(): readonly CheckValue[] {
  const medianOf = (times: readonly Watched[]): number | null =>
    incidenceQuantile(aalenJohansen(times), 0.5).value;
  const shared = { method: 'Median', source: freireich, tolerance: 0 };
  return [
    { ...shared, what: '6-MP', expected: 23, computed: medianOf(treated) },
    { ...shared, what: 'placebo', expected: 8, computed: medianOf(placebo) },
  ];
}

function ofGroup(group: string, { seconds, end }: Watched): GroupTime {
  return { group, seconds, isCensored: end !== 'ended' };
}

function logRankValues(): readonly CheckValue[] {
  const found = logRank([
    [...treated.map((time) => ofGroup('a', time)), ...placebo.map((time) => ofGroup('b', time))],
  ]);
  const row = (what: string, expected: number, computed: number | undefined): CheckValue => ({
    method: 'Log-rank',
    what,
    source: freireich,
    expected,
    computed,
    tolerance: relative(expected, 1e-7),
  });
  return [
    row('chi-square', 16.792941, found?.chiSquare),
    row('p', 4.1688091e-5, found?.p),
    row('observed, 6-MP', 9, found?.groups[0]?.observed),
    row('expected, 6-MP', 19.2505009, found?.groups[0]?.expected),
    row('expected, placebo', 10.7494991, found?.groups[1]?.expected),
  ];
}

/** Kaplan-Meier, its median, and the log-rank test. */
export const survivalValues: readonly CheckValue[] = [
  ...curveValues(),
  ...quantileValues(),
  ...logRankValues(),
];
