import { describe, expect, test } from 'vitest';
import { pollText } from '../../support/clean-swap.ts';
import { whenOf } from '../../support/pair-facts.ts';
import { atRest, cleanWork, conditionIn, nowOf, shown } from '../../support/swap-now.ts';

describe('a swap that began before its log', () => {
  const begun = [
    '09:01:00  RO1 A  role active',
    '09:01:00  RO1 B  role none',
    '09:01:00  RO1    partner not ready',
    '09:01:00  RO1 A  firmware 6.4.1',
  ];
  const rest = cleanWork.filter((line) => line > '09:02' && line < '09:20');

  test('is in work, and waits for a module since the log began', async () => {
    const [now] = await shown([...begun, '09:01:30 RO1 A link a up'], null);
    expect([now?.awaits, now?.half, now?.swap]).toEqual(['in', 'B', null]);
    expect(now?.since === undefined || now.since === null ? '' : whenOf(now.since)).toBe('09:01:00');
    expect(now?.holdPoint.status).toBe('waiting');
  });

  test('waits for a module no longer than its limit, counted from there', async () => {
    const now = await nowOf([...begun, '09:16:01 RO1 A link a up']);
    expect(now.holdPoint.status).toBe('stop');
  });

  test('is never met, since its removal was not observed', async () => {
    const now = await nowOf([...begun, ...rest]);
    const { status, statement } = conditionIn(now, 'begun-before');
    expect([status, statement]).toEqual([
      'waiting',
      'The log begins with half B out: how it came to that was not observed; check at the cabinet.',
    ]);
    expect([now.holdPoint.id, now.holdPoint.status]).toEqual(['switchover', 'waiting']);
  });

  test('is known by a first insertion too', async () => {
    const now = await nowOf(['09:01:50 RO1 A role active', '09:01:50 RO1 A firmware 6.4.1', ...rest]);
    expect(conditionIn(now, 'begun-before').half).toBe('B');
  });

  test('and by a pair that begins without a partner', async () => {
    const poll = pollText(['09:01:00', '09:03:00'], 10, [
      ['RO1-A', 'role', ['09:01:00', 'active']],
      ['RO1', 'partner present', ['09:01:00', 'no']],
    ]);
    const now = await nowOf({ 'poll.csv': poll });
    expect([now.awaits, now.half]).toEqual(['in', 'B']);
  });

  test('a pair at rest is none', async () => {
    expect(await shown(atRest, null)).toEqual([]);
  });
});

describe('a half that only polls show to be gone', () => {
  const polled = (...blank: (readonly [string, string])[]): string =>
    pollText(['08:40:00', '09:05:00'], 10, [
      ['RO1-A', 'role', ['08:40:00', 'active']],
      ['RO1-A', 'serial', ['08:40:00', 'T4-1']],
      ['RO1-B', 'role', ['08:40:00', 'standby'], ['09:00:00', 'none']],
      ['RO1-B', 'serial', ['08:40:00', 'T4-2'], ...blank],
      ['RO1', 'partner ready', ['08:40:00', 'yes'], ['09:00:00', 'no']],
    ]);

  test('is waited for from then on, though it is no swap yet: it may be starting again', async () => {
    const now = await nowOf({ 'poll.csv': polled(['09:00:00', '']) });
    expect([now.awaits, now.half, now.swap, now.limitSeconds]).toEqual(['in', 'B', null, 900]);
    expect(now.since === null ? '' : whenOf(now.since)).toBe('08:59:50..09:00:00');
    expect(now.halves.find((h) => h.half === 'B')?.isOut).toBe(true);
  });

  test('is not, once it reports again', async () => {
    const now = await nowOf({ 'poll.csv': polled(['09:00:00', ''], ['09:02:00', 'T4-2']) });
    expect(now.awaits).toBe('baseline');
  });
});

describe('a half that stops reporting after a swap', () => {
  const poll = (to: string, ...blank: (readonly [string, string])[]): string =>
    pollText(['08:40:00', to], 10, [
      ['RO1-A', 'role', ['08:40:00', 'active']],
      ['RO1-A', 'serial', ['08:40:00', 'T4-1'], ...blank],
      ['RO1-B', 'role', ['08:40:00', 'standby'], ['09:00:00', 'none'], ['09:02:00', 'standby']],
      ['RO1-B', 'serial', ['08:40:00', 'T4-2'], ['09:00:00', ''], ['09:02:00', 'T4-3']],
      ['RO1', 'partner ready', ['08:40:00', 'yes'], ['09:00:00', 'no'], ['09:05:00', 'yes']],
    ]);

  test('is part of it while it lasts, and is waited for', async () => {
    const now = await nowOf({ 'poll.csv': poll('09:36:00', ['09:30:00', '']) });
    expect([now.awaits, now.half]).toEqual(['in', 'A']);
    expect(now.swap?.open?.awaits).toBe('in');
  });

  test('does not open one again that is over', async () => {
    // Ready at 09:05, and so for the half hour of the soak.
    const now = await nowOf({ 'poll.csv': poll('10:16:00', ['10:00:00', '']) });
    expect([now.awaits, now.swap?.open]).toEqual([null, null]);
  });
});
