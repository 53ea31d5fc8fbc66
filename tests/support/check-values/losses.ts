import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { changePoint } from '../../../src/statistics/change-point.ts';
import { findingChance } from '../../../src/statistics/finding-chance.ts';
import { gammaPoisson } from '../../../src/statistics/gamma-poisson.ts';
import { meanCumulative } from '../../../src/statistics/mean-cumulative.ts';
import { withinBounds } from '../../../src/statistics/ordered-uniform.ts';
import { mantelHaenszel, stratifiedChance, type TwoRates } from '../../../src/statistics/stratified-rates.ts';
import { type CheckValue, relative } from './check-value.ts';

function rowsOf(name: string): readonly (readonly string[])[] {
  const text = readFileSync(join('tests', 'fixtures', 'published', name), 'utf8');
  return text
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));
}

/** Failures of ten pumps, and thousand hours watched. */
const pumps = [
  [5, 94.3],
  [1, 15.7],
  [5, 62.9],
  [14, 126],
  [3, 5.24],
  [19, 31.4],
  [1, 1.05],
  [1, 1.05],
  [4, 2.1],
  [22, 10.5],
] as const;
const shrunken = [0.0609, 0.1075, 0.0908, 0.1165, 0.588, 0.6069, 0.7886, 0.7886, 1.4347, 1.9405];

function pumpValues(): readonly CheckValue[] {
  const found = gammaPoisson(pumps.map(([count, exposure]) => ({ count, exposure })));
  const shared = {
    method: 'Gamma-Poisson rates',
    source:
      'Gaver and O’Muircheartaigh, Robust Empirical Bayes Analyses of Event Rates, Technometrics 29 (1987), pumps; digits as R 4.2.2',
  };
  return [
    { ...shared, what: 'shape', expected: 0.82297, computed: found?.prior?.shape, tolerance: 5e-6 },
    { ...shared, what: 'rate', expected: 1.26165, computed: found?.prior?.rate, tolerance: 5e-6 },
    ...shrunken.map((expected, index) => ({
      ...shared,
      what: `pump ${index + 1}`,
      expected,
      computed: found?.shrunken[index],
      tolerance: 5e-5,
    })),
  ];
}

/** Deaths and person-years of smokers and others in five ages. */
const doctors = [
  [32, 52_407, 2, 18_790],
  [104, 43_248, 12, 10_673],
  [206, 28_612, 28, 5710],
  [186, 12_663, 28, 2585],
  [102, 5317, 31, 1462],
] as const;

function stratum(count: number, exposure: number, others: number, otherExposure: number): TwoRates {
  return { first: { count, exposure }, second: { count: others, exposure: otherExposure } };
}

function doctorValues(): readonly CheckValue[] {
  const found = mantelHaenszel(
    doctors.map(([smokers, years, others, otherYears]) => stratum(smokers, years, others, otherYears)),
    0.95,
  );
  const shared = {
    method: 'Mantel-Haenszel rate ratio',
    source: 'Doll and Hill (1966), deaths of doctors (from memory); digits as R 4.2.2',
    tolerance: 5e-5,
  };
  return [
    { ...shared, what: 'ratio', expected: 1.4247, computed: found?.ratio },
    { ...shared, what: 'low', expected: 1.1547, computed: found?.low },
    { ...shared, what: 'high', expected: 1.7578, computed: found?.high },
    {
      method: 'Stratified chance',
      what: '1 of 1 at a half, 2 of 2 at a third',
      source: 'by hand: 1/2 times 1/9, both sides',
      // All three events in the first: 1/2 * (1/3)^2 = 1/18; twice that.
      expected: 1 / 9,
      computed: stratifiedChance([stratum(1, 1, 0, 1), stratum(2, 1, 0, 2)]),
      tolerance: 1e-12,
    },
  ];
}

const valveSteps = [
  [98, 0.1463415, 0.0551993],
  [344, 0.5609756, 0.1146538],
  [640, 1.2435422, 0.2263244],
  [653, 1.5426875, 0.3116561],
] as const;

function valveValues(): readonly CheckValue[] {
  const engines = new Map<string, { readonly events: number[]; end: number }>();
  for (const [engine = '', days, status] of rowsOf('valve-seats.csv')) {
    const own = engines.get(engine) ?? { events: [], end: 0 };
    if (status === '1') own.events.push(Number(days));
    else own.end = Number(days);
    engines.set(engine, own);
  }
  const steps = meanCumulative([...engines.values()]);
  const shared = {
    method: 'Mean cumulative function',
    source:
      'Nelson, Confidence Limits for Recurrence Data, Technometrics 37 (1995), valve seats; computed with R survival 3.5.3',
    tolerance: 5e-8,
  };
  return valveSteps.flatMap(([day, mean, error]) => {
    const step = steps.find(({ time }) => time === day);
    return [
      { ...shared, what: `by day ${day}`, expected: mean, computed: step?.mean },
      { ...shared, what: `robust error on day ${day}`, expected: error, computed: step?.standardError },
    ];
  });
}

function coalValues(): readonly CheckValue[] {
  const [begin, end] = [1851, 1963];
  const found = changePoint(
    rowsOf('coal-disasters.csv').map(([date]) => Number(date) - begin),
    end - begin,
    1,
  );
  const shared = {
    method: 'Change of rate',
    source: 'Jarrett, Biometrika 66 (1979), coal-mining disasters; digits as R 4.2.2',
  };
  const { time = Number.NaN, before = Number.NaN, after = Number.NaN } = found ?? {};
  return [
    { ...shared, what: 'after event', expected: 125, computed: found?.event, tolerance: 0 },
    { ...shared, what: 'year', expected: 1890.19, computed: begin + time, tolerance: 5e-3 },
    { ...shared, what: 'rate before', expected: 3.1896, computed: before / time, tolerance: 5e-5 },
    {
      ...shared,
      what: 'rate after',
      expected: 0.9065,
      computed: after / (end - begin - time),
      tolerance: 5e-5,
    },
    { ...shared, what: 'statistic', expected: 73.111, computed: found?.statistic, tolerance: 5e-4 },
  ];
}

function handValues(): readonly CheckValue[] {
  const hand = { source: 'by hand', tolerance: 1e-12 };
  return [
    // Two values between 0.2 and 0.9: 0.7 squared.
    {
      ...hand,
      method: 'Ordered uniform values',
      what: 'two between 0.2 and 0.9',
      expected: 0.49,
      computed: withinBounds([
        { low: 0.2, high: 0.9 },
        { low: 0.2, high: 0.9 },
      ]),
    },
    // Not both above 0.5.
    {
      ...hand,
      method: 'Ordered uniform values',
      what: 'least of two to 0.5',
      expected: 0.75,
      computed: withinBounds([
        { low: 0, high: 0.5 },
        { low: 0, high: 1 },
      ]),
    },
    // One event at a tenth: as far out as the lowest tenth and the highest.
    {
      ...hand,
      method: 'Change of rate',
      what: 'chance of one event at 0.1',
      expected: 0.2,
      computed: changePoint([0.1], 1, 1)?.p,
    },
    // Own 3, rest 0.01 expected: at a level of 0.05 five are needed against none (1/32), seven against one (9/256), nine
    // against two (67/2048). Poisson tables of mean 3: P[>= 5] 0.184737, P[>= 7] 0.033509, P[>= 9] 0.003803.
    {
      method: 'Power',
      what: 'three expected at the same exposure',
      source: 'by hand, tables of the Poisson distribution (mean 3, six digits)',
      expected: 0.99005 * 0.184737 + 0.0099005 * 0.033509 + 0.0000495 * 0.003803,
      computed: findingChance({ own: 0.01, rest: 0.01 }, 300, 0.05),
      tolerance: relative(1, 1e-6),
    },
  ];
}

/** Comparisons of losses: rates of several units, ratios, counts over time and changes. */
export const lossValues: readonly CheckValue[] = [
  ...pumpValues(),
  ...doctorValues(),
  ...valveValues(),
  ...coalValues(),
  ...handValues(),
];
