import { describe, expect, test } from 'vitest';
import { syncSentences } from '../../../src/report/sync-words.ts';
import { type CauseComparison, type GroupReview, sayShare } from '../../../src/vocabulary.ts';
import { emptyFleet } from '../../support/empty-fleet.ts';

function group(
  name: string,
  cause: GroupReview['cause'],
  median: number | null,
  p95: number | null,
): GroupReview {
  const figure = (value: number | null): GroupReview['median'] => ({ value, low: null, high: null });
  return {
    ...{ group: name, cause, attempts: 20, censored: 0, superseded: 0, survival: [], trend: null },
    ...{ median: figure(median), p95: figure(p95), tolerance9595: null, neededFor9595: 59 },
  };
}

const alike: CauseComparison = {
  ...{ cause: 'reflash', chiSquare: 0.2, df: 1, p: 0.65 },
  ...{ differs: false, slower: null, faster: null },
};
const apart: CauseComparison = {
  ...alike,
  cause: 'restart',
  differs: true,
  slower: '6.4.1',
  faster: '6.2.0',
};

function sentences(groups: readonly GroupReview[], ...causes: readonly CauseComparison[]): readonly string[] {
  return syncSentences({ ...emptyFleet, groups, logRank: { chiSquare: 9, df: 2, p: 0.01, causes } });
}

describe('the sentences about sync times', () => {
  const reflashed = [group('6.2.0', 'reflash', 80, 90), group('6.4.1', 'reflash', 81, 91)];
  const restarted = [group('6.2.0', 'restart', 81, 95), group('6.4.1', 'restart', 143, 170)];

  test('name the groups after the cause that differs, and no other', () =>
    expect(sentences([...reflashed, ...restarted], alike, apart)).toEqual([
      'After a restart 6.4.1 takes longer to become ready than 6.2.0: median 2 min 23 s, against 1 min 21 s.',
    ]));

  test('take the slowest of a hundred where half are ready in the same time', () =>
    expect(sentences([group('6.2.0', 'restart', 81, 95), group('6.4.1', 'restart', 81, 170)], apart)).toEqual(
      [
        'After a restart 6.4.1 takes longer to become ready than 6.2.0: 95th percentile 2 min 50 s, against 1 min 35 s.',
      ],
    ));

  test('give no times where there are none to compare', () =>
    expect(
      sentences([group('6.2.0', 'restart', 81, null), group('6.4.1', 'restart', null, null)], apart),
    ).toEqual(['After a restart 6.4.1 takes longer to become ready than 6.2.0.']));

  test('name no group where none alone differs from another', () =>
    expect(sentences(restarted, { ...apart, slower: null, faster: null })).toEqual([
      'Sync times by firmware differ after a restart.',
    ]));

  test('say that nothing differs, or why nothing was compared', () => {
    expect(sentences(reflashed, alike)).toEqual([
      'Sync times by firmware differ no more than chance explains.',
    ]);
    expect(syncSentences(emptyFleet)).toEqual([
      'Sync times by firmware cannot be compared: the logs show no bring-up.',
    ]);
  });
});

describe('a share', () => {
  test.each([
    [0, '0 %'],
    [0.5, '50 %'],
    [0.3773, '37.73 %'],
    [0.99, '99 %'],
    [0.99993, '99.993 %'],
    [0.9999999, '99.99999 %'],
    [1 - 4e-9, '99.9999996 %'],
    [0.00002, '0.002 %'],
    [1, '100 %'],
  ])('of %d is said as %s', (share, said) => expect(sayShare(share)).toBe(said));
});
