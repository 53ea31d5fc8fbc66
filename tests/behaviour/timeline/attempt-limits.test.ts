import { describe, expect, test } from 'vitest';
import { attemptsAfter, attemptsIn, readinessPoll, readyJournal } from '../../support/attempts.ts';
import { journalText } from '../../support/read-text.ts';

describe('past its limit of five minutes', () => {
  const start = ['10:10:00  RO1    partner not ready', '10:10:00  RO1 B  module restart'];
  test('by less than a millisecond it is not, by one it is', async () => {
    expect(await attemptsAfter(...start, '10:15:00  RO1 A  light off')).toEqual(['B restart unfinished 300']);
    expect(await attemptsAfter(...start, '10:15:00.001  RO1 A  light off')).toEqual([
      'B restart overdue 300.001',
    ]);
  });
  test('a removal, a restart or another sync finds it overdue; a reflash or a switchover does not', async () => {
    for (const next of ['module removed', 'module restart'])
      expect((await attemptsAfter(...start, `10:16:00  RO1 B  ${next}`))[0]).toBe('B restart overdue 360');
    expect(
      (await attemptsAfter(...start, '10:11:00  RO1 B  sync start', '10:16:00  RO1 B  sync start'))[0],
    ).toBe('B restart overdue 360');
    expect((await attemptsAfter(...start, '10:16:00  RO1 B  reflash start'))[0]).toBe(
      'B restart superseded 360',
    );
    expect(
      (await attemptsAfter(...start, '10:16:00  RO1 A  role standby', '10:16:00  RO1 B  role active'))[0],
    ).toBe('B restart superseded 360');
  });
  test('one that is ready at last is not, though that has not held when the log ends', async () => {
    const late = '10:20:00  RO1    partner ready';
    expect(await attemptsAfter(...start, late, '10:20:30  RO1 A  light off')).toEqual([
      'B restart unfinished 630',
    ]);
    expect(await attemptsAfter(...start, late, '10:21:00  RO1 A  light off')).toEqual([
      'B restart ready 600',
    ]);
  });
});

describe('what was not observed of readiness is not judged', () => {
  const roles = '10:00:00  RO1 A  role active\n10:00:00  RO1 B  role standby';
  const log = (...lines: readonly string[]): string => journalText([roles, ...lines].join('\n'));
  const restart = '10:03:05  RO1 B  module restart';
  const end = '10:40:00  RO1 A  light off';
  const before = [
    ['10:00:00', 'yes'],
    ['10:01:00', 'yes'],
    ['10:02:00', 'yes'],
    ['10:03:00', 'yes'],
    ['10:04:00', 'no'],
  ] as const;

  test('a gap in the poll may hide a ready partner that held', async () => {
    // No reading from 10:04 to 10:30: the gap is longer than three spacings.
    const after = [
      ['10:30:00', 'no'],
      ['10:31:00', 'no'],
    ] as const;
    const found = await attemptsIn({
      'ro1.log': log(restart, end),
      'poll.csv': readinessPoll(...before, ...after),
    });
    expect(found.map((a) => [a.cause, a.outcome])).toEqual([['restart', 'inconclusive']]);
    // Surely without a ready partner to 10:04:00 only, where the last reading before the gap was made.
    expect(found[0]?.watched.low).toBe(55);
  });
  test('a gap that comes after the limit changes nothing: it was overdue before', async () => {
    const minutes = ['05', '06', '07', '08', '09', '10', '11'].map((m) => [`10:${m}:00`, 'no'] as const);
    const found = await attemptsIn({
      'ro1.log': log(restart, end),
      'poll.csv': readinessPoll(...before, ...minutes),
    });
    expect(found.map((a) => a.outcome)).toEqual(['overdue']);
  });
  test('readiness that was never logged, or never seen to break', async () => {
    const never = await attemptsIn({ 'ro1.log': log(restart, end) });
    expect(never.map((a) => a.outcome)).toEqual(['inconclusive']);
    const unbroken = await attemptsIn({ 'ro1.log': readyJournal(restart, end) });
    expect(unbroken.map((a) => [a.outcome, a.stages.map((s) => s.stage)])).toEqual([
      ['inconclusive', ['starting']],
    ]);
  });
  test('a poll that leaves open whether a ready partner held', async () => {
    const rows = (...clocks: readonly (readonly [string, 'yes' | 'no'])[]): string =>
      readinessPoll(...before, ...clocks);
    // Ready from 10:05 at the latest to 10:05 at least, and lost by 10:06: between 0 and 120 s.
    const open = rows(['10:05:00', 'yes'], ['10:06:00', 'no'], ['10:07:00', 'no']);
    const first = (await attemptsIn({ 'ro1.log': log(restart), 'poll.csv': open }))[0];
    expect(first?.outcome).toBe('inconclusive');
    // Ready from 10:05 to 10:06 at least: 60 s.
    const held = rows(['10:05:00', 'yes'], ['10:06:00', 'yes'], ['10:07:00', 'no']);
    expect((await attemptsIn({ 'ro1.log': log(restart), 'poll.csv': held }))[0]?.outcome).toBe('ready');
  });
});
