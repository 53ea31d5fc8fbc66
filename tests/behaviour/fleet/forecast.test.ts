import { describe, expect, test } from 'vitest';
import { forecastOf } from '../../../src/fleet/forecast.ts';
import { defaultFleetLimits } from '../../../src/fleet/limits.ts';
import type { BringUp, Forecast } from '../../../src/vocabulary.ts';
import { madeBringUp } from '../../support/made-bring-up.ts';

const settled = (count: number, seconds = 90): readonly BringUp[] =>
  Array.from({ length: count }, (_, i) =>
    madeBringUp({ seconds: seconds + (i % 4), outcome: 'settled', time: i }),
  );
const forecast = (attempts: readonly BringUp[], swaps = 10): Forecast | null =>
  forecastOf(attempts, swaps, defaultFleetLimits);

describe('the forecast of the next swaps', () => {
  test('is none without a reflash that settled', () => {
    expect(forecast([])).toBeNull();
    expect(forecast([madeBringUp({ seconds: 100, outcome: 'superseded' })])).toBeNull();
    expect(forecast([madeBringUp({ seconds: 90, outcome: 'settled', cause: 'restart' })])).toBeNull();
  });

  // Two modules of 91.5 s on average each, ten times over: 1830 s.
  test('of few reflashes is what they make one expect, without limits', () => {
    const found = forecast(settled(4));
    expect(found).toMatchObject({ swaps: 10, low: null, high: null, reflashes: 4, failed: 0, needed: 20 });
    expect(found?.hours).toBeCloseTo(1830 / 3600, 12);
    expect(forecast(settled(19))?.low).toBeNull();
    expect(forecast(settled(20))?.low).not.toBeNull();
  });

  test('has limits about what is expected, the wider the more swaps, each step among them', () => {
    const found = forecast(settled(20), 40);
    expect(found?.steps).toHaveLength(40);
    let before = 0;
    for (const { hours, low, high } of found?.steps ?? []) {
      expect(low).toBeLessThan(hours);
      expect(high).toBeGreaterThan(hours);
      const width = (high ?? 0) - (low ?? 0);
      expect(width).toBeGreaterThan(before * 0.9);
      before = width;
    }
  });

  // 20 settled in 91.5 s each and 5 that failed after 300 s: (1830 + 1500) / 20 = 166.5 s a module.
  test('counts what failed, as often as it did', () => {
    const failed = Array.from({ length: 5 }, () => madeBringUp({ seconds: 300, outcome: 'superseded' }));
    const found = forecast([...settled(20), ...failed], 1);
    expect(found).toMatchObject({ reflashes: 25, failed: 5 });
    expect(found?.hours).toBeCloseTo((2 * 166.5) / 3600, 12);
    expect((found?.high ?? 0) * 3600).toBeGreaterThan(2 * 91.5 + 300);
  });

  // One lost and watched for a day counts for 15 min: (1830 + 900) / 20; cut off after 60 s it says nothing.
  test('counts a failed one for 15 min at most, and one that its log cuts off not at all', () => {
    const lost = madeBringUp({ seconds: 86_400, outcome: 'lost' });
    expect(forecast([...settled(20), lost], 1)?.hours).toBeCloseTo((2 * 136.5) / 3600, 12);
    const cut = madeBringUp({ seconds: 60, outcome: 'unfinished' });
    expect(forecast([...settled(20), cut], 1)).toMatchObject({ reflashes: 20, failed: 0 });
    const never = madeBringUp({ seconds: 900, outcome: 'unfinished' });
    expect(forecast([...settled(20), never], 1)).toMatchObject({ reflashes: 21, failed: 1 });
  });

  test('is learnt from the newest thousand, whatever the order they come in', () => {
    const old = madeBringUp({ seconds: 800, outcome: 'settled', time: -1 });
    const newest = settled(1000);
    const [found, mixed] = [forecast([old, ...newest], 1), forecast([...newest, old].reverse(), 1)];
    expect(found).toMatchObject({ reflashes: 1000 });
    expect(mixed).toEqual(found);
  });

  test('of reflashes that all took the same is that time', () => {
    const alike = Array.from({ length: 20 }, () => madeBringUp({ seconds: 90, outcome: 'settled' }));
    const found = forecast(alike, 1);
    expect(found?.low).toBeCloseTo(0.05, 12);
    expect(found?.high).toBeCloseTo(0.05, 12);
  });
});
