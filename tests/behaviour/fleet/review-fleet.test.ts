import { describe, expect, test } from 'vitest';
import { fleet } from '../../../src/pipeline.ts';
import type { Fleet, PairReview } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../../support/read-text.ts';

const question = { by: 'firmware', swaps: 10 } as const;
const day = 86_400_000;
const begin = Date.UTC(2026, 0, 1);
const stamp = (time: number): string => new Date(time).toISOString();

/** A pair watched for a year of 365.25 days that loses its partner for a minute at the given days. */
function yearOf(pair: string, ...lossDays: readonly number[]): string {
  const state = [`${pair} partner ready`, `${pair}-A role active`, `${pair}-B role standby`].map(
    (text) => `${stamp(begin)} ${text}`,
  );
  const losses = lossDays.flatMap((d) => [
    `${stamp(begin + d * day)} ${pair} partner not ready`,
    `${stamp(begin + d * day + 60_000)} ${pair} partner ready`,
  ]);
  return [...state, ...losses, `${stamp(begin + 365.25 * day)} ${pair}-A light off`].join('\n');
}

async function review(...logs: readonly string[]): Promise<Fleet> {
  const files = logs.map((log, index) => [`${index}.log`, `${log}\n`] as const);
  return fleet(await analyseTexts(Object.fromEntries(files)), question);
}

const pairOf = (found: Fleet, name: string): PairReview | undefined =>
  found.pairs.find((p) => p.pair === name);

describe('the losses of a pair', () => {
  test('become a rate a year of observed time, with exact limits', async () => {
    const found = pairOf(await review(yearOf('RO1', 10, 100, 200), yearOf('RO2')), 'RO1');
    expect(found?.observedSeconds).toBe(365.25 * 86_400);
    expect(found?.losses).toBe(3);
    expect(found?.ratePerYear?.value).toBeCloseTo(3, 9);
    // Garwood (1936): 95 % limits of a count of 3 are 0.6187 and 8.7673.
    expect(found?.ratePerYear?.low).toBeCloseTo(0.6187, 4);
    expect(found?.ratePerYear?.high).toBeCloseTo(8.7673, 4);
    expect(found?.availability).toBeCloseTo(1 - (3 * 60) / (365.25 * 86_400), 9);
  });

  test('stand out only where chance does not explain them', async () => {
    const many = Array.from({ length: 12 }, (_, i) => 20 + i * 25);
    const others = ['RO2', 'RO3', 'RO4', 'REMIN'].map((name) => yearOf(name, 50, 250));
    const found = await review(yearOf('RO1', ...many), ...others);
    expect(found.pairs[0]?.pair).toBe('RO1');
    expect(found.pairs.map((p) => p.standsOut)).toEqual([true, false, false, false, false]);
    // One-sided: 12 of 20 losses in a fifth of the time, binomial with 1/5: P[X >= 12] = 0.000102.
    expect(found.pairs[0]?.p).toBeCloseTo(0.000102, 5);
    const alike = await review(yearOf('RO1', 10, 90, 200), ...others);
    expect(alike.pairs.some((p) => p.standsOut)).toBe(false);
  });

  test('that come more and more often have a trend above 0', async () => {
    const late = pairOf(await review(yearOf('RO1', 200, 260, 310, 330, 345, 355), yearOf('RO2')), 'RO1');
    expect(late?.trend.laplace).toBeGreaterThan(1.96);
    expect(late?.trend.comesCloser).toBe(true);
    const none = pairOf(await review(yearOf('RO1'), yearOf('RO2')), 'RO1');
    expect(none?.trend).toEqual({
      laplace: null,
      p: null,
      shape: null,
      shapeP: null,
      comesCloser: false,
    });
  });

  test('of one pair alone are compared with nothing', async () => {
    const [only] = (await review(yearOf('RO1', 5))).pairs;
    expect([only?.p, only?.standsOut, only?.bouts]).toEqual([null, null, 1]);
  });
});

describe('readiness for a swap', () => {
  /** A log of seven lines of state, the given ones from line 8 on, and one at its end. */
  const readinessOf = async (...lines: readonly string[]): Promise<unknown> => {
    const state = ['A', 'B'].flatMap((half) => [
      `${stamp(begin)} RO1-${half} firmware 6.4.1`,
      `${stamp(begin)} RO1-${half} model Tern-4`,
    ]);
    const end = `${stamp(begin + 10 * day)} RO1-A light off`;
    const log = [yearOf('RO1').split('\n').slice(0, 3).join('\n'), ...state, ...lines, end].join('\n');
    const readiness = (await review(log)).pairs[0]?.readiness;
    return { ...readiness, evidence: readiness?.evidence.map((l) => l.line).sort((a, b) => a - b) };
  };

  test('is there where nothing speaks against it: its partner was ready in line 1, the log ends in line 8', async () =>
    expect(await readinessOf()).toEqual({ fit: true, reasons: [], evidence: [1, 8] }));

  test.each([
    ['RO1 partner not ready', 'It has no ready partner.', [8]],
    ['RO1-B firmware 6.2.0', 'The firmware of its halves differs: 6.4.1 and 6.2.0.', [4, 8]],
    ['RO1 configuration pending', 'A configuration is pending.', [8]],
    ['RO1-B link a down', 'Link a of half B is down.', [8]],
  ])('is not there after "%s"', async (line, reason, evidence) => {
    expect(await readinessOf(`${stamp(begin + 2 * day)} ${line}`)).toEqual({
      fit: false,
      reasons: [reason],
      evidence,
    });
  });

  test('is not there after another module came in that says nothing of its firmware', async () => {
    const readiness = await readinessOf(`${stamp(begin + 2 * day)} RO1-B model Tern-2`);
    expect(readiness).toHaveProperty('reasons', [
      'The firmware of half B is not known.',
      'The model of its halves differs: Tern-4 and Tern-2.',
    ]);
  });

  test('is not there within a day of a loss', async () => {
    const at = begin + 9.5 * day;
    const lines = [`${stamp(at)} RO1 partner not ready`, `${stamp(at + 60_000)} RO1 partner ready`];
    expect(await readinessOf(...lines)).toEqual({
      fit: false,
      reasons: ['It lost its ready partner within the last 24 h 00 min.'],
      evidence: [8],
    });
  });

  test('that was never logged rests on the first and the last line of the log', async () => {
    const log = `${stamp(begin)} RO1-A role active\n${stamp(begin + 10 * day)} RO1-A light off`;
    const readiness = (await review(log)).pairs[0]?.readiness;
    expect(readiness?.reasons).toContain('Readiness of its partner was never logged.');
    expect(readiness?.evidence.map((l) => l.line)).toEqual([1, 2]);
  });
});

describe('the sync times of groups', () => {
  /** Restarts of half B, a day apart, ready after so many seconds. */
  const restarts = (pair: string, firmware: string, ...seconds: readonly number[]): string =>
    [
      `${stamp(begin)} ${pair}-A role active`,
      `${stamp(begin)} ${pair}-B role standby`,
      `${stamp(begin)} ${pair}-B firmware ${firmware}`,
      `${stamp(begin)} ${pair} partner ready`,
      ...seconds.flatMap((s, i) => [
        `${stamp(begin + (i + 1) * day)} ${pair}-B module restart`,
        `${stamp(begin + (i + 1) * day + 1000)} ${pair} partner not ready`,
        `${stamp(begin + (i + 1) * day + s * 1000)} ${pair} partner ready`,
      ]),
      `${stamp(begin + 40 * day)} ${pair}-B light steady`,
    ].join('\n');

  test('are told apart by firmware, with their median', async () => {
    const found = await review(
      restarts('RO1', '6.2.0', 80, 82, 84, 86, 88),
      restarts('RO2', '6.4.1', 140, 142, 144, 146, 148),
    );
    expect(found.groups.map((g) => [g.group, g.cause, g.attempts, g.censored, g.median.value])).toEqual([
      ['6.2.0', 'restart', 5, 0, 84],
      ['6.4.1', 'restart', 5, 0, 144],
    ]);
    expect(found.logRank?.df).toBe(1);
    expect(found.logRank?.p).toBeLessThan(0.01);
    // Wilks: 59 values are needed for the greatest to cover 95 in 100 with 95 % confidence.
    expect(found.groups.map((g) => [g.tolerance9595, g.neededFor9595])).toEqual([
      [null, 59],
      [null, 59],
    ]);
  });

  test('of one group are compared with nothing', async () => {
    expect((await review(restarts('RO1', '6.2.0', 80, 82))).logRank).toBeNull();
  });
});
