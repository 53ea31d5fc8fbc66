import { expect, test } from 'vitest';
import { runningClock } from '../../../src/procedure/running-clock.ts';

const at = Date.parse('2026-03-14T09:00:00Z');
const arrived = 5_000_000;

test('goes on from the newest stamp by what has passed here since its row came', () => {
  expect(runningClock({ at, habitSeconds: 30 }, arrived, arrived)).toEqual({ at, isSilent: false });
  expect(runningClock({ at, habitSeconds: 30 }, arrived, arrived + 12_000)).toEqual({
    at: at + 12_000,
    isSilent: false,
  });
});

test('stops once the log is silent for longer than its habit', () => {
  expect(runningClock({ at, habitSeconds: 30 }, arrived, arrived + 30_000)).toEqual({
    at: at + 30_000,
    isSilent: false,
  });
  expect(runningClock({ at, habitSeconds: 30 }, arrived, arrived + 30_001)).toEqual({
    at: at + 30_000,
    isSilent: true,
  });
});

test('of a journal, which has no habit, goes on', () => {
  expect(runningClock({ at, habitSeconds: null }, arrived, arrived + 3_600_000)).toEqual({
    at: at + 3_600_000,
    isSilent: false,
  });
});

test('does not go back where the clock here is set back', () => {
  expect(runningClock({ at, habitSeconds: 30 }, arrived, arrived - 60_000)).toEqual({ at, isSilent: false });
});
