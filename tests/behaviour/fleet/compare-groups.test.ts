import { describe, expect, test } from 'vitest';
import { compareGroups } from '../../../src/fleet/compare-groups.ts';
import { defaultFleetLimits } from '../../../src/fleet/limits.ts';
import { groupReviews, syncTimes } from '../../../src/fleet/sync-groups.ts';
import type { BringUp, BringUpCause, Fleet } from '../../../src/vocabulary.ts';
import { madeBringUp } from '../../support/made-bring-up.ts';

/** Ten attempts of a firmware, `apart` seconds from each other. */
const ten = (firmware: string, cause: BringUpCause, from: number, apart = 1): readonly BringUp[] =>
  Array.from({ length: 10 }, (_, i) =>
    madeBringUp({ seconds: from + i * apart, outcome: 'settled', firmware, cause }),
  );

function compare(...attempts: readonly (readonly BringUp[])[]): NonNullable<Fleet['logRank']> {
  const times = syncTimes(attempts.flat(), (a) => a.firmware);
  const found = compareGroups(times, groupReviews(times, defaultFleetLimits), defaultFleetLimits);
  if (found === null) throw new Error('nothing was compared');
  return found;
}

describe('groups of sync times', () => {
  test('differ only after the cause whose own times differ', () => {
    const { causes } = compare(
      ten('6.2.0', 'restart', 80),
      ten('6.4.1', 'restart', 140),
      ten('6.2.0', 'reflash', 80),
      ten('6.4.1', 'reflash', 80.5),
    );
    expect(causes.map((c) => [c.cause, c.differs, c.slower, c.faster])).toEqual([
      ['restart', true, '6.4.1', '6.2.0'],
      ['reflash', false, null, null],
    ]);
  });

  // 6.0.0 has one attempt, the longest of all: what one attempt took is chance.
  test('are named where they differ, not where one has the longest time by chance', () => {
    const one = madeBringUp({ seconds: 150, outcome: 'settled', firmware: '6.0.0' });
    const { causes } = compare(ten('6.2.0', 'reflash', 80), ten('6.4.1', 'reflash', 140), [one]);
    expect(causes.map((c) => [c.differs, c.slower, c.faster])).toEqual([[true, '6.4.1', '6.2.0']]);
  });

  test('are compared by intervals where polls tell them', () => {
    const polled = (firmware: string, from: number): readonly BringUp[] =>
      ten(firmware, 'reflash', from).map((a) =>
        madeBringUp({ seconds: a.sync.seconds ?? 0, outcome: 'settled', firmware, within: 5 }),
      );
    const { causes } = compare(polled('6.2.0', 80), polled('6.4.1', 140));
    expect(causes.map((c) => [c.differs, c.slower, c.faster])).toEqual([[true, '6.4.1', '6.2.0']]);
  });
});
