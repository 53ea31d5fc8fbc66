import { expect, test } from 'vitest';
import { watchedSwaps } from '../../../src/cli/watched-swaps.ts';
import { newest, swapNowWith, swapWith } from '../../support/made-swap-now.ts';

// A removal 15 min before the newest stamp.
const open = swapNowWith({ swap: swapWith({}) });
const over = swapNowWith({ awaits: null, since: null, swap: swapWith({ verdict: 'verified' }) });
const ends = (to: number, pair = 'RO1') => [{ pair, to }];

test('a swap that was open and is not any more ends the watch', () => {
  const swaps = watchedSwaps();
  swaps.take([open], ends(newest));
  expect(swaps.isOver()).toBe(false);
  swaps.take([over], ends(newest));
  expect(swaps.isOver()).toBe(true);
  expect(swaps.swaps()).toEqual([over.swap]);
});

test('a swap that was over when its pair was first read does not, but is what is told of at an interrupt', () => {
  const swaps = watchedSwaps();
  swaps.take([over], ends(newest));
  expect(swaps.isOver()).toBe(false);
  expect(swaps.swaps()).toEqual([over.swap]);
});

test('a swap that began and ended between two looks does', () => {
  const swaps = watchedSwaps();
  swaps.take([], ends(newest - 1_000_000));
  swaps.take([over], ends(newest));
  expect(swaps.isOver()).toBe(true);
});

test('a pair whose files vanish is not over', () => {
  const swaps = watchedSwaps();
  swaps.take([open], ends(newest));
  swaps.take([], []);
  expect(swaps.isOver()).toBe(false);
  expect(swaps.swaps()).toEqual([open.swap]);
});

test('of two pairs in work both must be over, and a third that was over before is not told of', () => {
  const named = (pair: string, now: typeof open) => ({ ...now, pair });
  const swaps = watchedSwaps();
  const pairs = ['RO1', 'RO2', 'RO3'].flatMap((pair) => ends(newest, pair));
  swaps.take([named('RO1', open), named('RO2', open), named('RO3', over)], pairs);
  swaps.take([named('RO1', over), named('RO2', open), named('RO3', over)], pairs);
  expect(swaps.isOver()).toBe(false);
  swaps.take([named('RO2', over)], pairs);
  expect(swaps.isOver()).toBe(true);
  expect(swaps.swaps()).toHaveLength(2);
});

test('a pair that is named and not in work does not end it', () => {
  const swaps = watchedSwaps();
  swaps.take([swapNowWith({ awaits: 'out', swap: null })], ends(newest));
  expect(swaps.isOver()).toBe(false);
  expect(swaps.swaps()).toEqual([]);
});
