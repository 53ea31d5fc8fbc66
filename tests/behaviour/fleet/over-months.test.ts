import { describe, expect, test } from 'vitest';
import { fleet } from '../../../src/pipeline.ts';
import type { Fleet } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../../support/read-text.ts';

const day = 86_400;

async function review(log: string): Promise<Fleet> {
  const lines = log.split('\n').map((line) => line.trim());
  return fleet(await analyseTexts({ 'x.log': `${lines.join('\n')}\n` }), { by: 'firmware', swaps: 10 });
}

describe('the months of a pair', () => {
  test('hold its losses and the time it was observed', async () => {
    const { months } = await review(`2026-01-30T00:00:00Z RO1 partner ready
      2026-01-31T12:00:00Z RO1 partner not ready
      2026-01-31T12:01:00Z RO1 partner ready
      2026-03-01T23:00:00Z RO1 partner not ready
      2026-03-01T23:01:00Z RO1 partner ready
      2026-03-02T00:00:00Z RO1 partner not ready
      2026-03-02T00:01:00Z RO1 partner ready`);
    // January has two days left, February 28, March one and a minute.
    expect(months.map((m) => [new Date(m.from).toISOString(), m.observedSeconds, m.losses, m.bouts])).toEqual(
      [
        ['2026-01-01T00:00:00.000Z', 2 * day, 1, 1],
        ['2026-02-01T00:00:00.000Z', 28 * day, 0, 0],
        ['2026-03-01T00:00:00.000Z', day + 60, 2, 1],
      ],
    );
  });

  test('of a pair without a loss count none', async () => {
    const { months } = await review(
      '2026-01-30T00:00:00Z RO1 partner ready\n2026-01-31T00:00:00Z RO1 light steady',
    );
    expect(months.map((m) => m.losses)).toEqual([0]);
  });
});

test('the census counts halves at the begin of each month and at the end', async () => {
  const { census } = await review(`2026-01-10T00:00:00Z RO1-A firmware 6.2.0
    2026-01-10T00:00:00Z RO1-B firmware 6.2.0
    2026-02-10T00:00:00Z RO1-B firmware 6.4.1
    2026-03-10T00:00:00Z RO1-B role standby`);
  const firmware = census.filter((c) => c.signal === 'firmware');
  expect(firmware.map((c) => [new Date(c.time).toISOString().slice(0, 10), c.value, c.halves])).toEqual([
    ['2026-02-01', '6.2.0', 2],
    ['2026-03-01', '6.2.0', 1],
    ['2026-03-01', '6.4.1', 1],
    ['2026-03-10', '6.2.0', 1],
    ['2026-03-10', '6.4.1', 1],
  ]);
  expect(census.filter((c) => c.signal === 'model').map((c) => [c.value, c.halves])).toEqual([
    [null, 2],
    [null, 2],
    [null, 2],
  ]);
});

describe('sync times over the months', () => {
  const month = (index: number): string => String(index + 1).padStart(2, '0');
  /** One restart in the middle of each month, ready after `seconds` and ten more in each month. */
  const restarts = (months: number, seconds: number): string =>
    [
      '2026-01-01T00:00:00Z RO1-A role active',
      '2026-01-01T00:00:00Z RO1-B role standby',
      '2026-01-01T00:00:00Z RO1 partner ready',
      ...Array.from({ length: months }, (_, i) => {
        const ready = seconds + 10 * i;
        const [minutes, rest] = [Math.floor(ready / 60), ready % 60];
        return `2026-${month(i)}-15T09:00:00Z RO1-B module restart
          2026-${month(i)}-15T09:00:01Z RO1 partner not ready
          2026-${month(i)}-15T09:0${minutes}:${String(rest).padStart(2, '0')}Z RO1 partner ready`;
      }),
      '2026-12-31T00:00:00Z RO1-A light off',
    ].join('\n');

  test('that rise by ten seconds a month rise by two minutes a year', async () => {
    const [group] = (await review(restarts(12, 80))).groups;
    expect(group?.trend?.months).toBe(12);
    // Ten seconds in a month of 365.25 / 12 days, within the 28 to 31 days that months have.
    expect(group?.trend?.secondsPerYear.value).toBeGreaterThan((10 * 365.25) / 31);
    expect(group?.trend?.secondsPerYear.value).toBeLessThan((10 * 365.25) / 28);
    // All 66 pairs of 12 months rise: S = 66, Var = 12 * 11 * 29 / 18 = 212.67, z = 65 / 14.583 = 4.457, two-sided 8.3e-6.
    expect(group?.trend?.p).toBeCloseTo(8.3e-6, 7);
  });

  test('are not judged before the tenth month', async () => {
    expect((await review(restarts(9, 80))).groups.map((g) => g.trend)).toEqual([null]);
    expect((await review(restarts(10, 80))).groups.map((g) => g.trend?.months)).toEqual([10]);
  });
});
