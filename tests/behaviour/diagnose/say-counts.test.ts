import { expect, test } from 'vitest';
import { sayCounts } from '../../../src/diagnose/say-counts.ts';
import type { Attempt, Duration } from '../../../src/vocabulary.ts';

/** An attempt with an outcome, and how long its failed sync took where its start was logged. */
function attempt(
  outcome: Attempt['outcome'],
  abort: Duration | null = null,
  cause: Attempt['cause'] = 'sync',
): Attempt {
  return {
    pair: 'RO1',
    half: 'B',
    cause,
    start: { time: 0, earliest: 0 },
    end: { time: 1, earliest: 1 },
    outcome,
    watched: exactly(1),
    abort,
    model: null,
    serial: null,
    firmware: null,
    stages: [],
    evidence: [{ file: 'a.log', line: 1, text: '' }],
  };
}
const exactly = (seconds: number): Duration => ({ seconds, low: seconds, high: seconds });
/** By stamps of whole seconds. */
const about = (seconds: number): Duration => ({ seconds, low: seconds - 1, high: seconds + 1 });

test('no attempt, and the wait after a loss, which is none', () => {
  expect(sayCounts([])).toBe('no attempt was logged');
  expect(sayCounts([attempt('overdue', null, 'loss')], ' in that time')).toBe(
    'no attempt was logged in that time',
  );
});

test('one attempt that failed, did not, or could not be judged', () => {
  const said = (one: Attempt): string => sayCounts([one]).replace('one attempt was logged, which ', '');
  expect(said(attempt('lost'))).toBe('failed');
  expect(said(attempt('failed', exactly(80)))).toBe('failed after 1 min 20 s');
  expect(said(attempt('unfinished'))).toBe('is not known to have failed');
  expect(said(attempt('ready'))).toBe('became ready');
  expect(said(attempt('inconclusive'))).toBe(
    'could not be judged because readiness was not observed closely enough',
  );
});

test('several, and how many of them failed', () => {
  const [failed, ready] = [attempt('failed'), attempt('ready')];
  expect(sayCounts([failed, failed])).toBe('both attempts failed');
  expect(sayCounts([failed, attempt('overdue'), attempt('lost')])).toBe('all 3 attempts failed');
  expect(sayCounts([ready, attempt('superseded')])).toBe('none of 2 attempts is known to have failed');
  expect(sayCounts([failed, ready, ready], ' in that time')).toBe('1 of 3 attempts in that time failed');
  expect(sayCounts([failed, failed, attempt('inconclusive')])).toBe(
    '2 of 3 attempts failed; one could not be judged because readiness was not observed closely enough',
  );
});

test('how long failed syncs took, where the start of each was logged', () => {
  const after = (...aborts: readonly (Duration | null)[]): string =>
    sayCounts([...aborts.map((a) => attempt('failed', a)), attempt('ready')]).replace(/^.*failed/, '');
  expect(after(exactly(120), exactly(120))).toBe(' after 2 min 00 s each');
  expect(after(exactly(166), exactly(61), exactly(90))).toBe(' after 1 min 01 s to 2 min 46 s');
  expect(after(exactly(120), null)).toBe('');
  expect(after(about(1), about(1))).toBe(' after about 1 s each');
  expect(after(about(3), about(60))).toBe(' after about 3 s to 1 min 00 s');
  // A poll of a minute: from the least that the shortest may have taken to the most of the longest.
  const coarse: Duration = { seconds: 120, low: 60, high: 120 };
  expect(after(coarse, exactly(200))).toBe(' after 1 min 00 s to 3 min 20 s');
});
