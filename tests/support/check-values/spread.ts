import { studentWithin } from '../../../src/statistics/distributions.ts';
import { ratioBySpread } from '../../../src/statistics/spread-of-rates.ts';
import type { CheckValue } from './check-value.ts';

/** Rates compared by the spread between units. */
export function spreadValues(): readonly CheckValue[] {
  const table = {
    method: 'Student t',
    source: 'NIST/SEMATECH e-Handbook, section 1.3.6.7.2, upper critical values (three decimals)',
    tolerance: 5e-4,
  };
  // Rates 3 (counts 2 and 4) and 1 (1 and 1): relative variance (1 + 1) / 36 * 2 = 1/9; t = 3 ln 3 with 2 degrees, of which
  // the two-sided chance is 1 - t / sqrt(t^2 + 2); the limit is 3 exp(-4.302653 / 3).
  const found = ratioBySpread(
    [2, 4].map((count) => ({ count, exposure: 1 })),
    [1, 1].map((count) => ({ count, exposure: 1 })),
    0.95,
  );
  const t = 3 * Math.log(3);
  const hand = { method: 'Ratio by spread', source: 'by hand', tolerance: 1e-6 };
  return [
    { ...table, what: '0.975, 1 degree', expected: 12.706, computed: studentWithin(0.95, 1) },
    { ...table, what: '0.975, 7 degrees', expected: 2.365, computed: studentWithin(0.95, 7) },
    { ...table, what: '0.995, 30 degrees', expected: 2.75, computed: studentWithin(0.99, 30) },
    { ...hand, what: 'chance', expected: 1 - t / Math.sqrt(t ** 2 + 2), computed: found?.p },
    { ...hand, what: 'low', expected: 3 * Math.exp(-4.302653 / 3), computed: found?.low },
  ];
}
