import { describe, expect, test } from 'vitest';
import { isFailed } from '../../../src/timeline/attempts.ts';
import type { Attempt } from '../../../src/vocabulary.ts';
import {
  attemptLine,
  attemptsAfter,
  attemptsIn,
  readinessPoll,
  readyJournal,
  wholeSeconds,
} from '../../support/attempts.ts';
import { journalText } from '../../support/read-text.ts';

describe('an attempt failed where a failed sync was logged, whatever else was not', () => {
  test('no role, no readiness, no half, no start', async () => {
    const alone = journalText('10:00:00  RO1  sync failed\n10:00:30  RO1  configuration current');
    const [found] = await attemptsIn({ 'ro1.log': alone });
    expect(found).toMatchObject({ half: null, cause: 'sync', outcome: 'failed', abort: null, serial: null });
  });
  test('a start without a half, the roles not stated', async () => {
    const lines =
      '10:00:00  RO1  sync start\n10:00:40  RO1  sync failed\n10:01:00  RO1  configuration current';
    const [found] = await attemptsIn({ 'ro1.log': journalText(lines) });
    expect(found).toMatchObject({ half: null, outcome: 'failed', abort: { seconds: 40, low: 40, high: 40 } });
    expect(found?.stages.map((s) => s.stage)).toEqual(['synchronising']);
  });
  test('while no reading of readiness was made', async () => {
    const failed = ['10:12:00  RO1 B  sync start', '10:13:00  RO1 B  sync failed'];
    const readings = readinessPoll(
      ['10:00:00', 'yes'],
      ['10:01:00', 'yes'],
      ['10:02:00', 'no'],
      ['10:40:00', 'no'],
    );
    const found = await attemptsIn({ 'ro1.log': readyJournal(...failed), 'poll.csv': readings });
    expect(found.map(attemptLine)).toContain('B sync failed 60');
  });
  test('whose start the poll did not yet read as after the loss', async () => {
    // Lost between 10:09:50 and 10:10:00; the sync began at 10:09:55 and failed after half a minute.
    const readings = readinessPoll(
      ['10:09:30', 'yes'],
      ['10:09:40', 'yes'],
      ['10:09:50', 'yes'],
      ['10:10:00', 'no'],
    );
    const roles = '10:00:00  RO1 A  role active\n10:00:00  RO1 B  role standby';
    const syncs = '10:09:55  RO1 B  sync start\n10:10:25  RO1 B  sync failed';
    const found = await attemptsIn({ 'ro1.log': journalText(`${roles}\n${syncs}`), 'poll.csv': readings });
    expect(found.map(attemptLine)).toEqual(['B sync failed 30']);
    expect(found[0]?.abort?.seconds).toBe(30);
  });
  test('a sync that starts while the partner is ready is one only if it fails', async () => {
    expect(await attemptsAfter('10:05:00  RO1 B  sync start', '10:30:00  RO1 A  light off')).toEqual([]);
    expect(await attemptsAfter('10:05:00  RO1 B  sync start', '10:05:50  RO1 B  sync failed')).toEqual([
      'B sync failed 50',
    ]);
  });
  test('told by both halves within two seconds it failed once; told by one twice, twice', async () => {
    const start = ['10:10:00  RO1    partner not ready', '10:11:00  RO1 B  sync start'];
    const failed = '10:12:00  RO1 B  sync failed';
    const other = (clock: string, half: string): string => `${clock}  RO1 ${half}  sync failed`;
    expect(await attemptsAfter(...start, failed, other('10:12:02', 'A'))).toEqual(['B sync failed 60']);
    expect(await attemptsAfter(...start, failed, other('10:12:02.001', 'A'))).toHaveLength(2);
    expect(
      await attemptsAfter(...start, failed, '10:12:00.500  RO1 A  light off', other('10:12:01.500', 'B')),
    ).toHaveLength(2);
  });
});

describe('stamps of whole seconds', () => {
  const begin = `10:00:00 RO1-A role active
    10:00:00 RO1-B role standby
    10:00:00 RO1-A partner ready
    10:10:00 RO1-A partner not ready`;
  test('a sync fails before the next one starts in the same second, and each has its bounds', async () => {
    const found = await attemptsIn({
      'ro1.log': wholeSeconds(`${begin}
        10:10:10 RO1-B sync start
        10:10:12 RO1-B sync start
        10:10:12 RO1-B sync failed
        10:10:15 RO1-B sync failed`),
    });
    expect(found.map(attemptLine)).toEqual(['B sync failed 2', 'B sync failed 3']);
    expect(found.map((a) => a.abort)).toEqual([
      { seconds: 2, low: 1, high: 3 },
      { seconds: 3, low: 2, high: 4 },
    ]);
  });
  test('a sync that starts and fails in one second failed', async () => {
    const [found] = await attemptsIn({
      'ro1.log': wholeSeconds(`${begin}
        10:10:10 RO1-B sync start
        10:10:10 RO1-B sync failed`),
    });
    expect(found).toMatchObject({ outcome: 'failed', abort: { seconds: 0, low: 0, high: 1 } });
  });
  test('a sync fails before the restart of the same second begins another attempt', async () => {
    const found = await attemptsIn({
      'ro1.log': wholeSeconds(`${begin}
        10:10:10 RO1-B sync start
        10:10:40 RO1-B module restart
        10:10:40 RO1-B sync failed
        10:11:00 RO1-A light off`),
    });
    expect(found.map(attemptLine)).toEqual(['B sync failed 30', 'B restart unfinished 20']);
  });
});

describe('a module that was in for seconds', () => {
  const out = ['10:10:00  RO1 B  module removed', '10:10:00  RO1    partner not ready'];
  const inserted = '10:12:00  RO1 B  module inserted';
  test('had no fair try, also where it was ready for moments before it was pulled', async () => {
    const pulled = ['10:12:10  RO1 B  module removed', '10:12:10  RO1    partner not ready'];
    const end = '10:13:00  RO1 A  light off';
    expect(await attemptsAfter(...out, inserted, ...pulled, end)).toEqual(['B inserted superseded 10']);
    expect(await attemptsAfter(...out, inserted, '10:12:03  RO1    partner ready', ...pulled, end)).toEqual([
      'B inserted superseded 10',
    ]);
    // The loss is read two seconds after the removal that brought it.
    const ready = '10:12:03  RO1    partner ready';
    const lateLoss = ['10:12:10  RO1 B  module removed', '10:12:12  RO1    partner not ready'];
    expect(await attemptsAfter(...out, inserted, ready, ...lateLoss, end)).toEqual([
      'B inserted superseded 10',
    ]);
    // Not pulled, but lost by itself: it did not hold.
    const lost = ['10:12:03  RO1    partner ready', '10:12:10  RO1    partner not ready'];
    expect(await attemptsAfter(...out, inserted, ...lost, end)).toEqual([
      'B inserted lost 3',
      'B loss unfinished 50',
    ]);
  });
  test('is not over where the log ends, ready or not', async () => {
    expect(await attemptsAfter(...out, inserted, '10:12:05  RO1 A  light off')).toEqual([
      'B inserted unfinished 5',
    ]);
    expect(await attemptsAfter(...out, inserted, '10:12:05  RO1    partner ready')).toEqual([
      'B inserted unfinished 5',
    ]);
  });
});

test('for sure failed are those that failed, did not hold, or were overdue', () => {
  const outcomes = [
    'ready',
    'lost',
    'failed',
    'overdue',
    'superseded',
    'unfinished',
    'inconclusive',
  ] as const;
  const watched = { seconds: 900, low: 900, high: 900 };
  const attempt: Omit<Attempt, 'outcome'> = {
    pair: 'RO1',
    half: 'B',
    cause: 'restart',
    start: { time: 0, earliest: 0 },
    end: { time: 900_000, earliest: 900_000 },
    watched,
    abort: null,
    model: null,
    serial: null,
    firmware: null,
    stages: [],
    evidence: [{ file: 'ro1.log', line: 1, text: '' }],
  };
  expect(outcomes.filter((outcome) => isFailed({ ...attempt, outcome }))).toEqual([
    'lost',
    'failed',
    'overdue',
  ]);
});
