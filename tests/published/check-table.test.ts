/**
 * The methods of src/statistics against values from outside, each with its source and tolerance in
 * tests/support/check-values; printed as one table. A tolerance is that of the printed digits, or relative 1e-7 where the
 * digits were computed by other software.
 */
import { afterAll, expect, test } from 'vitest';
import { boundedValues } from '../support/check-values/bounded.ts';
import type { CheckValue } from '../support/check-values/check-value.ts';
import { incidenceValues } from '../support/check-values/incidence.ts';
import { intervalValues } from '../support/check-values/intervals.ts';
import { limitValues } from '../support/check-values/limits.ts';
import { lossValues } from '../support/check-values/losses.ts';
import { spreadValues } from '../support/check-values/spread.ts';
import { survivalValues } from '../support/check-values/survival.ts';
import { trendValues } from '../support/check-values/trends.ts';

const values: readonly CheckValue[] = [
  ...survivalValues,
  ...incidenceValues,
  ...intervalValues,
  ...limitValues,
  ...boundedValues,
  ...trendValues,
  ...lossValues,
  ...spreadValues(),
];

function difference({ expected, computed }: CheckValue): number {
  if (expected === null || computed === null || computed === undefined)
    return expected === computed ? 0 : Infinity;
  return Math.abs(computed - expected);
}

function shown(value: number | null | undefined): string {
  return typeof value === 'number' ? String(Number(value.toPrecision(9))) : 'none';
}

function line(cells: readonly string[], widths: readonly number[]): string {
  return cells.map((cell, index) => cell.padEnd(widths[index] ?? 0)).join('  ');
}

function table(): string {
  const rows = [
    ['method', 'value', 'expected', 'computed', 'difference', 'source'],
    ...values.map((value) => [
      value.method,
      value.what,
      shown(value.expected),
      shown(value.computed),
      difference(value).toExponential(1),
      value.source,
    ]),
  ];
  const widths = [0, 1, 2, 3, 4].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows.map((row) => line(row, widths)).join('\n');
}

test.each(values)('$method: $what', (value) => {
  expect(difference(value), `${value.expected} against ${value.computed}`).toBeLessThanOrEqual(
    value.tolerance,
  );
});

test('no two rows are alike', () => {
  expect(new Set(values.map(({ method, what }) => `${method}: ${what}`)).size).toBe(values.length);
});

afterAll(() => {
  process.stdout.write(`${table()}\n`);
});
