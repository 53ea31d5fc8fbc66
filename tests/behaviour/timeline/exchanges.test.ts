import { describe, expect, test } from 'vitest';
import { pollText } from '../../support/clean-swap.ts';
import { journalText } from '../../support/read-text.ts';
import {
  eventsTold as events,
  polledRoles as polled,
  switchoversTold as switchovers,
} from '../../support/role-polls.ts';

const first = '10:00:00';
const then = '10:05:00';

describe('an exchange of identities by an export that names roles only', () => {
  test('shows it where the module of the standby had never been read: the standby shows what the active half was', async () => {
    const story = polled(
      ['active serial', [first, 'T4-1'], [then, 'T4-3']],
      ['standby serial', [first, 'T4-2'], ['10:03:00', ''], [then, 'T4-1']],
    );
    expect(await switchovers(story)).toEqual(['10:04:50..10:05:00 1>2']);
  });

  test('shows none where the module that was active comes back as the standby two minutes after another took its place', async () => {
    const story = polled(
      ['active serial', [first, 'T4-1'], [then, 'T4-9']],
      ['standby serial', [first, 'T4-2'], ['10:07:00', 'T4-1']],
    );
    expect(await switchovers(story)).toEqual([]);
  });

  test('is another at the next look, though both may have been at the instant of the look between', async () => {
    const story = polled(
      ['active serial', [first, 'T4-1'], [then, 'T4-2'], ['10:05:10', 'T4-1']],
      ['standby serial', [first, 'T4-2'], [then, 'T4-1'], ['10:05:10', 'T4-2']],
    );
    expect(await switchovers(story)).toEqual(['10:04:50..10:05:00 1>2', '10:05:00..10:05:10 2>1']);
    expect((await events(story)).filter((event) => /removed|inserted/.test(event))).toEqual([]);
  });

  test('shows two of them where the serial of the active half is not read in between', async () => {
    const often = pollText(['10:00:00', '10:10:00'], 10, [
      ['RO1', 'standby serial', [first, 'T4-2'], [then, 'T4-1'], ['10:06:00', 'T4-2']],
    ]);
    const seldom = pollText(['10:00:00', '10:10:00'], 600, [['RO1', 'active serial', [first, 'T4-1']]]);
    const [header = '', ...rows] = often.trimEnd().split('\n');
    const all = [...rows, ...seldom.trimEnd().split('\n').slice(1)].sort();
    expect(await switchovers({ 'poll.csv': `${[header, ...all].join('\n')}\n` })).toEqual([
      '10:04:50..10:05:00 1>2',
      '10:05:50..10:06:00 2>1',
    ]);
  });

  test('shows it by the firmware too where the row of the standby stands first', async () => {
    const story = polled(
      ['standby firmware', [first, '6.4.1'], [then, '6.2.0']],
      ['active firmware', [first, '6.2.0'], [then, '6.4.1']],
    );
    expect(await switchovers(story)).toEqual(['10:04:50..10:05:00 1>2']);
  });
});

describe('what was read under the name of a role', () => {
  test('goes on under the new roles from a reading on that is made within three spacings after the switchover', async () => {
    const lights = async (to: string): Promise<readonly string[]> => {
      const poll = pollText(['10:00:00', to], 10, [['RO1', 'standby light', [first, 'steady']]]);
      const log = [
        '10:00:00 RO1 A role active',
        '10:00:00 RO1 B role standby',
        '10:05:03 RO1 A role standby',
        '10:05:03 RO1 B role active',
        '10:10:00 RO1 A link a up',
      ];
      return events({ 'poll.csv': poll, 'ro1.log': journalText(log.join('\n')) }, 'light');
    };
    const before = '10:00:00 B light steady was -';
    // 10:05:03 and three times 10 s.
    expect(await lights('10:10:00')).toEqual([before, '10:05:03..10:05:33 A light steady was -']);
    // The last reading was made before that.
    expect(await lights('10:05:20')).toEqual([before, '10:05:03..10:05:20 A light steady was -']);
    // None was made after the switchover.
    expect(await lights('10:05:00')).toEqual([before]);
  });

  test('only after the switchover is of the half that holds the role by then', async () => {
    const log = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1 B role standby',
      '10:05:03 RO1 A role standby',
      '10:05:03 RO1 B role active',
      '10:10:00 RO1 A link a up',
    ];
    const poll = pollText(['10:06:00', '10:10:00'], 10, [['RO1', 'standby light', [first, 'steady']]]);
    expect(await events({ 'poll.csv': poll, 'ro1.log': journalText(log.join('\n')) }, 'light')).toEqual([
      '10:06:00 A light steady was -',
    ]);
  });

  test('goes on under the new roles with the rows themselves that show the switchover', async () => {
    const story = polled(
      ['active serial', [first, 'T4-1'], [then, 'T4-2']],
      ['standby serial', [first, 'T4-2'], [then, 'T4-1']],
      ['active light', [first, 'off']],
      ['standby light', [first, 'steady']],
    );
    // What was read as the active half's was that of 1, and is that of 2 from the exchange on.
    expect(await events(story, 'light')).toEqual([
      '10:00:00 1 light off was -',
      '10:00:00 2 light steady was -',
      '10:04:50..10:05:00 1 light steady was off',
      '10:04:50..10:05:00 2 light off was steady',
    ]);
  });
});
