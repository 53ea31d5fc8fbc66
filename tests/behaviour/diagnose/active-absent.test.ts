import { describe, expect, test } from 'vitest';
import { activeAbsent } from '../../../src/diagnose/active-absent.ts';
import { checkCause, diagnoseCase, toldOf, type Variant } from '../../support/check-cause.ts';

checkCause(activeAbsent, {
  shows: {
    name: 'the active half gave up its role, and no half has taken it',
    plus: ['06:59:59  RO1 A  role none'],
    for: [
      'Half A has the role none and half B the role standby, so no half is active. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: [],
    // (3.5 / 4) to (0.5 / 2) is 3.5 to 1: 5.4 decibans and 10.
    decibans: 15.4,
    lines: ['06:59:59 RO1 A role none', '06:00:00 RO1 B role standby'],
  },
  lookAlike: {
    name: 'no half was active between two attempts',
    plus: ['07:03:00  RO1 A  role none', '07:03:30  RO1 A  role active'],
    instead: 'too-little-data',
    against: ['Half A is active.'],
  },
  tooLittle: {
    name: 'no role was logged',
    without: ['role'],
    names: 'a log of the roles (role)',
    against: [],
  },
});

describe('no half is active', () => {
  const told = (variant: Variant): Promise<readonly unknown[]> => toldOf(variant, 'active-absent');
  const untold = ['doubted', 'What was logged of role does not cover the half or the times in question.'];

  test('at one of three failures: what speaks against it is told too', async () => {
    // (1.5 / 4) to (0.5 / 2) is 1.5 to 1: 1.8 decibans and 10.
    expect(await told({ plus: ['07:12:30  RO1 A  role none', '07:13:00  RO1 A  role active'] })).toEqual([
      11.8,
      'When an attempt last failed: half A has the role none and half B the role standby, so no half is active. This was so at 1 of 3 failed attempts and at 0 of 1 time with a ready partner.',
      'At the end of the log: half A is active.',
      'Attempts failed without a missing active half: 2 times.',
    ]);
  });

  test('is said where a line says so of each half, never where a role is only concluded', async () => {
    expect(await told({ without: ['RO1 A  role'] })).toEqual(untold);
    expect(await told({ without: ['RO1 B  role'], plus: ['06:59:59  RO1 A  role none'] })).toEqual(untold);
  });

  test('just after a restart of the active half: up to 30 s', async () => {
    // The first attempt fails at 07:02:10; after the restart no line says again what role half A has.
    const restarted = (clock: string): Variant => ({ plus: [`${clock}  RO1 A  module restart`] });
    // (1.5 / 2) to (0.5 / 2) is 3 to 1: 4.8 decibans and 10.
    expect(await told(restarted('07:01:40'))).toEqual([
      14.8,
      'When an attempt last failed: half A, the active one, restarted 30 s before. This was so at 1 of 1 failed attempt and at 0 of 1 time with a ready partner.',
    ]);
    expect(await told(restarted('07:01:39.999'))).toEqual(untold);
    // A restart after the failure did not bring it.
    expect((await told(restarted('07:02:10.001')))[0]).toBe('doubted');
  });

  test('though the standby has restarted since a line said its role', async () => {
    const variant = { plus: ['06:10:00  RO1 B  module restart', '06:59:59  RO1 A  role none'] };
    expect((await told(variant))[1]).toContain('This was so at 3 of 3 failed attempts');
  });

  test('is not said of a restart as the log ends: nothing has failed of it yet', async () => {
    const restart = '07:59:50  RO1 A  module restart';
    expect(await told({ plus: [restart] })).toEqual(untold);
    expect(await told({ plus: [restart], without: ['sync'] })).toEqual(untold);
    // Past its limit since 07:15, and still under way.
    const overdue = '07:10:00  RO1 B  module restart';
    expect(await told({ plus: [overdue, restart], without: ['sync'] })).toEqual(untold);
  });

  test('is not said of a restart of a half that was not active', async () => {
    expect(await told({ plus: ['07:02:00  RO1 B  module restart'] })).toEqual([
      'doubted',
      'Half A is active.',
    ]);
  });
});

test('a restart of the active half that a supply fault brought is counted as that of the supply', async () => {
  const plus = ['07:02:00', '07:09:20', '07:12:30'].map((clock) => `${clock}  RO1 A  module restart`);
  const dips = ['07:01:59', '07:09:19', '07:12:29'].flatMap((clock) => [
    `${clock}  RO1 A  supply fault`,
    `${clock}.500  RO1 A  supply good`,
  ]);
  const first = async (lines: readonly string[]): Promise<string | undefined> =>
    (await diagnoseCase({ name: '', plus: lines })).causes[0]?.id;
  expect(await first(plus)).toBe('active-absent');
  expect(await first([...plus, ...dips])).toBe('supply-fault');
});
