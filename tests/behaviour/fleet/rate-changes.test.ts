import { describe, expect, test } from 'vitest';
import { fleetSentences } from '../../../src/report/fleet-sentences.ts';
import { begin, day, daysFrom, firmwareFrom, lossLog, pairIn, reviewLogs } from '../../support/loss-logs.ts';

const days = 400;
const steady = (pair: string): string =>
  lossLog(pair, days, daysFrom(0, days, 6), ...firmwareFrom(pair, 0, '6.4.1'));

describe('a change of the rate of bouts', () => {
  test('is told where it is more than chance, with both rates', async () => {
    // One in 300 days, then twelve in 100: the first of them on day 300 + 100/24.
    const lost = [120, ...daysFrom(300, days, 12)];
    const found = await reviewLogs([
      lossLog('RO1', days, lost, ...firmwareFrom('RO1', 0, '6.4.1')),
      steady('RO2'),
      steady('RO3'),
    ]);
    const { change } = pairIn(found, 'RO1');
    const first = 300 + 100 / 24;
    expect(change?.time).toBe(Math.floor(begin + first * day));
    expect([change?.before.bouts, change?.after.bouts]).toEqual([1, 12]);
    expect(change?.before.observedSeconds).toBeCloseTo(first * 86_400, 0);
    expect(change?.after.observedSeconds).toBeCloseTo((days - first) * 86_400, 0);
    expect(change?.p).toBeLessThan(1e-4);
    expect(change?.curve.map((point) => point.bouts)).toEqual([
      ...Array.from({ length: 14 }, (_, i) => i),
      13,
    ]);
    expect(pairIn(found, 'RO2').change).toBeNull();
    expect(fleetSentences(found).join(' ')).toContain(
      'RO1 loses its partner more often since about Nov 2026: 12 losses in 95 days since, 1 in the 304 days before.',
    );
  });

  test('to the better is told as such', async () => {
    const lost = [...daysFrom(0, 100, 12), 220];
    const found = await reviewLogs([
      lossLog('RO1', days, lost, ...firmwareFrom('RO1', 0, '6.4.1')),
      steady('RO2'),
      steady('RO3'),
    ]);
    const { change } = pairIn(found, 'RO1');
    expect([change?.before.bouts, change?.after.bouts]).toEqual([12, 1]);
    expect(fleetSentences(found).join(' ')).toContain(
      'RO1 loses its partner less often since about Apr 2026: one loss in 304 days since, 12 in the 95 days before.',
    );
  });

  test('is no single loss with which a log ends', async () => {
    const lost = [...daysFrom(0, days, 6), days - 0.01];
    const found = await reviewLogs([
      lossLog('RO1', days, lost, ...firmwareFrom('RO1', 0, '6.4.1')),
      steady('RO2'),
    ]);
    expect(pairIn(found, 'RO1').change).toBeNull();
  });

  test('is not asked of four bouts', async () => {
    const found = await reviewLogs([lossLog('RO1', days, [396, 397, 398, 399]), steady('RO2')]);
    expect(pairIn(found, 'RO1').change).toBeNull();
    const five = await reviewLogs([lossLog('RO1', days, [395, 396, 397, 398, 399]), steady('RO2')]);
    expect(pairIn(five, 'RO1').change?.after.bouts).toBe(5);
  });
});
