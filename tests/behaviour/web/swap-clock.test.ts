import { describe, expect, test } from 'vitest';
import {
  type LogClock,
  sayClock,
  sayExpected,
  sayHoldPoint,
  sayRunning,
  sayWait,
  titleOfWait,
  waitOf,
} from '../../../web/swap-clock.ts';
import { exampleNow, hold } from '../../support/example-swap-now.ts';

/** So many seconds after the wait of the example began, at 09:14:00. */
function clockAt(seconds: number, state: LogClock['state'] = 'runs'): LogClock {
  return { at: Date.parse('2026-03-14T09:14:00Z') + seconds * 1000, state };
}

describe('the clock of what is awaited', () => {
  test.each([
    [0, '0:00'],
    [9.9, '0:09'],
    [252, '4:12'],
    [3599, '59:59'],
    [3852, '1:04:12'],
    [86_400, '24:00:00'],
  ])('says %d s as %s', (seconds, said) => {
    expect(sayRunning(seconds)).toBe(said);
  });

  test('counts from the instant the wait began to its limit, and past it', () => {
    const now = exampleNow();
    const at = (seconds: number): unknown => waitOf(now, clockAt(seconds));
    expect([at(252), at(300), at(300.5)]).toEqual([
      { seconds: 252, limitSeconds: 300, isPast: false },
      { seconds: 300, limitSeconds: 300, isPast: false },
      { seconds: 300.5, limitSeconds: 300, isPast: true },
    ]);
    expect(waitOf(exampleNow({ awaits: null, since: null }), clockAt(1))).toBeNull();
    expect(waitOf(exampleNow({ limitSeconds: null }), clockAt(9000))).toBeNull();
    expect(sayWait({ seconds: 252, limitSeconds: 300, isPast: false })).toBe('4:12 of 5:00');
  });
});

describe('the title of the tab', () => {
  test('carries the clock, what is awaited and the pair', () => {
    const title = (other: Parameters<typeof exampleNow>[0], seconds: number): string => {
      const now = exampleNow(other);
      return titleOfWait(now, waitOf(now, clockAt(seconds)));
    };
    expect(title({}, 252)).toBe('4:12 of 5:00 half B light - RO1');
    expect(title({}, 301)).toBe('5:01 of 5:00, limit passed, half B light - RO1');
    expect(title({ holdPoint: hold('stop') }, 301)).toBe(
      'stop - 5:01 of 5:00, limit passed, half B light - RO1',
    );
    expect(title({ awaits: 'soak', half: null, limitSeconds: 1800 }, 60)).toBe('1:00 of 30:00 soak - RO1');
    expect(title({ awaits: null, since: null }, 0)).toBe('Swap now - RO1');
  });

  test('shows a name that would turn its text as it is', () => {
    const now = exampleNow({ pair: 'RO\u202e1' });
    expect(titleOfWait(now, waitOf(now, clockAt(1)))).toBe('0:01 of 5:00 half B light - RO‹202E›1');
  });
});

describe('whose clock it is', () => {
  const now = exampleNow();
  const said = (state: LogClock['state'], hereSeconds = 252): string => {
    const clock = clockAt(252, state);
    return sayClock(now, clock, 'UTC', clockAt(hereSeconds).at).join(' ');
  };

  test('is said, and that it stands or has stopped', () => {
    expect(said('runs')).toBe('Clock of ro1-poll.csv: 14 Mar 2026 09:18:12.');
    expect(said('silent')).toBe(
      'Clock of ro1-poll.csv: 14 Mar 2026 09:18:12. The log is silent for longer than its habit of 30 s: its clock has stopped.',
    );
    expect(said('stands')).toContain('not followed: the clock stands at the newest row');
  });

  test('and how far it is from the clock of this computer, from two minutes on', () => {
    expect(said('runs', 252 + 119)).not.toContain('computer');
    expect(said('runs', 252 + 3600)).toContain('It is 1 h 00 min behind the clock of this computer.');
    expect(said('runs', 252 - 180)).toContain('It is 3 min 00 s ahead of the clock of this computer.');
  });
});

test('what is expected is said with its number, and that nobody tells', () => {
  const expected = { median: 122, p95: 190, n: 12 };
  expect(sayExpected(exampleNow({ expected }))).toBe(
    'median 2 min 02 s, 95th percentile 3 min 10 s (n = 12)',
  );
  expect(sayExpected(exampleNow({ expected: { ...expected, p95: null } }))).toContain(
    '95th percentile not known',
  );
  expect(sayExpected(exampleNow({ expected: { median: null, p95: null, n: 2 } }))).toBe(
    'too few bring-ups to say (n = 2)',
  );
  expect(sayExpected(exampleNow())).toBe('no bring-up to compare with');
  expect(sayExpected(exampleNow({ awaits: 'in' }))).toBe('');
});

test.each([
  ['removal', 'B', 'before half B is removed'],
  ['removal', null, 'before a removal'],
  ['switchover', 'B', 'before a switchover to half B'],
  ['leaving', null, 'before leaving the cabinet'],
] as const)('the hold point %s of %s stands %s', (id, half, said) => {
  expect(sayHoldPoint({ ...hold('met'), id, half })).toBe(said);
});
