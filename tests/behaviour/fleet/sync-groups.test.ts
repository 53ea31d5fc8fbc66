import { describe, expect, test } from 'vitest';
import { defaultFleetLimits } from '../../../src/fleet/limits.ts';
import { groupReviews, syncTimes } from '../../../src/fleet/sync-groups.ts';
import { sayNotReady, sayQuantile, saySure } from '../../../src/report/sync-words.ts';
import type { BringUp, GroupReview } from '../../../src/vocabulary.ts';
import { madeBringUp } from '../../support/made-bring-up.ts';

function groupOf(...attempts: readonly BringUp[]): GroupReview {
  const [group] = groupReviews(
    syncTimes(attempts, (a) => a.firmware),
    defaultFleetLimits,
  );
  if (group === undefined) throw new Error('no group');
  return group;
}

const ready = (...seconds: readonly number[]): readonly BringUp[] =>
  seconds.map((s) => madeBringUp({ seconds: s, outcome: 'settled' }));
const cut = (outcome: 'superseded' | 'unfinished', ...seconds: readonly number[]): readonly BringUp[] =>
  seconds.map((s) => madeBringUp({ seconds: s, outcome }));

describe('the sync times of a group', () => {
  // Eight of ten are reflashed after their insertion: two of ten become ready, and half never do.
  test('stay below a share that is superseded', () => {
    const found = groupOf(...ready(80, 100), ...cut('superseded', 10, 20, 30, 40, 50, 60, 70, 90));
    expect([found.attempts, found.superseded, found.censored]).toEqual([10, 8, 0]);
    expect(found.survival.map((s) => [s.seconds, s.surviving.toFixed(9)])).toEqual([
      [80, '0.900000000'],
      [100, '0.800000000'],
    ]);
    expect([found.median.value, found.median.high, found.p95.value]).toEqual([null, null, null]);
    expect(sayQuantile(found, 'median')).toBe('not reached');
    expect(sayNotReady(found)).toBe('8 superseded');
  });

  // Ready at 1 and 4, superseded at 2, not seen to end at 3. By hand: the incidence is 1/4 at 1; at 4 one is watched, and of
  // all 1/4 is ready, 1/4 superseded, so 1/2 may come yet and does: 3/4 are ready, 1/4 never is. Were the one
  // superseded counted as not seen to end, all would be ready at 4; were the other counted as superseded, half.
  test('tell one superseded from one not seen to end', () => {
    const found = groupOf(...ready(1, 4), ...cut('superseded', 2), ...cut('unfinished', 3));
    expect(found.survival.map((s) => [s.seconds, s.surviving])).toEqual([
      [1, 0.75],
      [4, 0.25],
    ]);
    expect([found.superseded, found.censored]).toEqual([1, 1]);
    expect(sayNotReady(found)).toBe('1 superseded, 1 not observed to the end');
  });

  // The same times between polls a fifth of a second apart: the curve steps at the far end of each.
  test('are the same where polls tell them, but for the readings', () => {
    const polled = ready(1, 4).map((a) =>
      madeBringUp({ seconds: a.sync.seconds ?? 0, outcome: 'settled', within: 0.1 }),
    );
    const found = groupOf(...polled, ...cut('superseded', 2), ...cut('unfinished', 3));
    expect(found.survival.map((s) => [s.seconds, s.surviving.toFixed(6)])).toEqual([
      [1.1, '0.750000'],
      [4.1, '0.250000'],
    ]);
  });
});

describe('limits of sync times', () => {
  const upTo = (count: number): readonly BringUp[] =>
    ready(...Array.from({ length: count }, (_, i) => 70 + i));

  test('of one attempt are not there, and the text says so', () => {
    const found = groupOf(...ready(80));
    expect([found.median, found.p95]).toEqual([
      { value: 80, low: null, high: null },
      { value: 80, low: null, high: null },
    ]);
    expect(sayQuantile(found, 'median')).toBe('1 min 20 s (limits: not enough data)');
    expect(saySure(found)).toBe('needs 59 attempts, there is one');
  });

  // Sign test: of six values the least and the greatest hold the median with 1 - 2 (1/2)^6 = 0.969, of five with 0.9375 only.
  test('of the median are there from six attempts on', () => {
    expect(groupOf(...upTo(5)).median).toEqual({ value: 72, low: null, high: null });
    expect(groupOf(...upTo(6)).median).toEqual({ value: 72, low: 70, high: 75 });
  });

  // Of ten values with share 0.95 below each: P[at most 7] = 0.0115, P[at most 8] = 0.086. So the eighth, 77, is the lower limit; an
  // upper one needs 0.95^n below 0.025, 72 values.
  test('of the 95th percentile: a lower one from ten attempts, an upper one from 72 on', () => {
    const ten = groupOf(...upTo(10));
    expect(ten.p95).toEqual({ value: 79, low: 77, high: null });
    expect(sayQuantile(ten, 'p95')).toBe('1 min 19 s (at least 1 min 17 s, upper limit: not enough data)');
    expect(groupOf(...upTo(71)).p95.high).toBeNull();
    expect(groupOf(...upTo(72)).p95.high).toBe(141);
  });

  test('are the same for a journal and for a poll too fine to matter', () => {
    const polled = upTo(40).map((a) =>
      madeBringUp({ seconds: a.sync.seconds ?? 0, outcome: 'settled', within: 1e-6 }),
    );
    const [exact, bounded] = [groupOf(...upTo(40)), groupOf(...polled)];
    for (const name of ['median', 'p95'] as const)
      for (const key of ['value', 'low', 'high'] as const)
        expect(bounded[name][key] ?? -1).toBeCloseTo(exact[name][key] ?? -1, 5);
  });

  test('of attempts of which none was seen to end are not there', () => {
    const found = groupOf(...cut('unfinished', 100, 200));
    expect(found.median).toEqual({ value: null, low: null, high: null });
    expect(sayQuantile(found, 'median')).toBe('not enough data (n = 2)');
  });
});
