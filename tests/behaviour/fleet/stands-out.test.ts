import { describe, expect, test } from 'vitest';
import { fleetSentences } from '../../../src/report/fleet-sentences.ts';
import { fleetText } from '../../../src/report/fleet-text.ts';
import { daysFrom, firmwareFrom, lossLog, pairIn, reviewLogs } from '../../support/loss-logs.ts';

const year = 365.25;
/** A pair watched for a year with so many losses, evenly apart. */
const yearOf = (pair: string, losses: number): string =>
  lossLog(pair, year, daysFrom(0, year, losses), ...firmwareFrom(pair, 0, '6.4.1'));

describe('pairs that lose their partner more often than the rest', () => {
  test('do not hide each other: four of eight', async () => {
    const bad = [20, 11, 10, 9].map((losses, index) => yearOf(`BAD${index}`, losses));
    const good = [1, 2, 3, 4].map((index) => yearOf(`GOOD${index}`, 1));
    const found = await reviewLogs([...bad, ...good]);
    expect(found.pairs.map((p) => [p.pair, p.standsOut])).toEqual([
      ...[0, 1, 2, 3].map((index) => [`BAD${index}`, true]),
      ...[1, 2, 3, 4].map((index) => [`GOOD${index}`, false]),
    ]);
    // Against the four good ones alone: 9 of 13 bouts in a fifth of the time, binomial: P[X >= 9] = 1.66e-4. Against all
    // others it would be 9 of 54 in an eighth: more than one in five.
    expect(pairIn(found, 'BAD3').p).toBeCloseTo(1.66e-4, 6);
    expect(found.power).toBeNull();
  });

  test('are not those whose losses came in one bout', async () => {
    const burst = Array.from({ length: 20 }, (_, index) => 100 + index / 48);
    const one = lossLog('RO1', year, burst, ...firmwareFrom('RO1', 0, '6.4.1'));
    const found = await reviewLogs([one, ...['RO2', 'RO3', 'RO4'].map((pair) => yearOf(pair, 2))]);
    expect([pairIn(found, 'RO1').losses, pairIn(found, 'RO1').bouts]).toEqual([20, 1]);
    expect(pairIn(found, 'RO1').ratePerYear?.value).toBeCloseTo(1, 9);
    expect(found.pairs.map((p) => p.standsOut)).toEqual([false, false, false, false]);
    expect(pairIn(found, 'RO1').trend.comesCloser).toBe(false);
  });

  test('are not those that were observed for two minutes; nor do these count among the rest', async () => {
    const short = lossLog('RO9', 105 / 86_400, [40 / 86_400]);
    const others = [12, 1, 1, 1].map((losses, index) => yearOf(`RO${index}`, losses));
    const found = await reviewLogs([short, ...others]);
    const { ratePerYear, rank, p, standsOut, trend } = pairIn(found, 'RO9');
    expect([ratePerYear, rank, p, standsOut, trend.comesCloser]).toEqual([null, null, null, null, null]);
    // 12 of 15 bouts in a quarter of the time, binomial: P[X >= 12] = 1.236e-5 (455 * 3^3 + 105 * 3^2 + 15 * 3 + 1, over 4^15).
    expect(pairIn(found, 'RO0').p).toBeCloseTo(1.236e-5, 8);
    expect(found.pairs.at(-1)?.pair).toBe('RO9');
    expect(fleetSentences(found)).toContain(
      'Observed for less than 30 days, so not compared: RO9 1 loss in 1 min 45 s.',
    );
  });

  test('that are not found leave the question how bad one must be to be found', async () => {
    const found = await reviewLogs(['RO1', 'RO2', 'RO3', 'RO4'].map((pair) => yearOf(pair, 2)));
    // Of 2 expected in a year a pair with three times as many has six or so. At 5 in 100 for four pairs (1.25 in 100 for
    // one), against six of the others it needs eight (P[X >= 8 of 14 in a quarter] = 0.0103; of 7 of 13 it is 0.0243), and a Poisson count of mean 6 is
    // eight or more in 25.6 of 100; the others vary, so that it is near that and no more.
    expect(found.power?.ratio).toBe(3);
    expect(found.power?.share).toBeGreaterThan(0.2);
    expect(found.power?.share).toBeLessThan(0.35);
    expect(fleetSentences(found)[0]).toMatch(
      /^None of 4 pairs loses .* with three times the rate of the others would be found in \d\d of 100 cases\.$/,
    );
  });

  test('are ranked by rates that are drawn towards that of all', async () => {
    const found = await reviewLogs([12, 3, 1, 1].map((losses, index) => yearOf(`RO${index}`, losses)));
    expect(found.pairs.map((p) => [p.pair, p.rank])).toEqual([
      ['RO0', 1],
      ['RO1', 2],
      ['RO2', 3],
      ['RO3', 3],
    ]);
    // The mean is 17 bouts in four years: 4.25.
    const [worst, , , best] = found.pairs.map((p) => p.shrunkenPerYear ?? Number.NaN);
    expect(worst).toBeGreaterThan(4.25);
    expect(worst).toBeLessThan(12);
    expect(best).toBeGreaterThan(1);
    expect(best).toBeLessThan(4.25);
  });

  test('are said to be fit and worse than the rest in one breath', async () => {
    const found = await reviewLogs([12, 1, 1, 1].map((losses, index) => yearOf(`RO${index}`, losses)));
    expect(pairIn(found, 'RO0').readiness.fit).toBe(true);
    const text = fleetText(found, { zone: 'UTC', paint: (words) => words, reports: [] });
    expect(text).toContain('    ready for a swap today, but loses its partner more often than the rest\n');
    const first = text.split('\n').slice(0, 10).join(' ');
    expect(first).toContain('steadypair diagnose FILES --pair RO0');
    expect(first).toContain('Throughout its log, from Jan 2026.');
  });
});
