import { describe, expect, test } from 'vitest';
import { chanceOfSmallGroups } from '../../../src/fleet/dealt-groups.ts';
import { defaultFleetLimits } from '../../../src/fleet/limits.ts';

const { dealing } = defaultFleetLimits;
const times = (group: string, from: number, count: number, spread = 0) =>
  Array.from({ length: count }, (_, index) => ({ group, low: from + index, high: from + index + spread }));

describe('groups of sync times', () => {
  test('of a hundred attempts and more are left to chi-square', () => {
    expect(
      chanceOfSmallGroups([[...times('6.2.0', 60, 100), ...times('6.4.1', 60, 100)]], dealing),
    ).toBeNull();
    expect(
      chanceOfSmallGroups([[...times('6.2.0', 60, 99), ...times('6.4.1', 60, 100)]], dealing),
    ).not.toBeNull();
  });
  // Of the 252 ways to deal five of ten, two part them: 0.0079; three standard errors of 20,000 deals are 0.0019.
  test.each([
    ['known to the second', 0],
    ['known between two readings', 0.5],
  ])('of five attempts each, all of one longer than all of the other, %s', (_, spread) => {
    const strata = [[...times('6.2.0', 60, 5, spread), ...times('6.4.1', 90, 5, spread)]];
    expect(Math.abs((chanceOfSmallGroups(strata, dealing) ?? 0) - 2 / 252)).toBeLessThan(0.0019);
  });
});
