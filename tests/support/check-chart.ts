import { describe, expect, test } from 'vitest';
import type { Chart } from '../../src/charts/chart.ts';
import { picture } from '../../src/report/picture.ts';

/** Draws rows, and holds a chart to its rules: every number is a field of a row, sums are made elsewhere, words are given. */
export function checkChart<Row extends object>(
  chart: Chart<Row>,
  cases: readonly {
    readonly name: string;
    readonly rows: readonly Row[];
    readonly shows: readonly string[];
    /** What the picture must not hold. */
    readonly hides?: readonly string[];
    readonly says: string;
  }[],
): void {
  describe(chart.id, () => {
    test('has no sums and no local clock in its specification', () => {
      for (const { rows } of cases) {
        const spec = JSON.stringify({ ...chart.spec(rows), data: null });
        expect(spec).not.toMatch(/"(?:aggregate|window|calculate|timeUnit|bin)"/);
        expect(spec).not.toMatch(/"type":"time"/);
      }
    });
    for (const { name, rows, shows, hides = [], says } of cases) {
      test(name, async () => {
        const frozen = rows.map((row) => Object.freeze(row));
        const [first, second] = [await picture(chart.spec(frozen)), await picture(chart.spec(frozen))];
        expect(second).toBe(first);
        for (const text of shows) expect(first).toContain(text);
        for (const text of hides) expect(first).not.toContain(text);
        expect(chart.describe(frozen)).toBe(says);
      });
    }
  });
}
