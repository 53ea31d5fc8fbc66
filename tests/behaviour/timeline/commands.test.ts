import { describe, expect, test } from 'vitest';
import { pollText } from '../../support/clean-swap.ts';
import { onlySwitchover } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
const exchange = ['10:05:01 RO1 A role standby', '10:05:01.2 RO1 B role active'];
const end = '10:30:00 RO1 A light off';

describe('the command of a switchover', () => {
  const commanded = async (...commands: readonly string[]): Promise<boolean | null> =>
    (await onlySwitchover([...begin, ...commands, ...exchange, '10:20:00 RO1 switchover command', end]))
      .commanded;

  test('comes up to 30 s before it, or at its stamp', async () => {
    expect(await commanded('10:04:31 RO1 switchover command')).toBe(true);
    expect(await commanded('10:04:30.999 RO1 switchover command')).toBe(false);
    expect(await commanded('10:05:01 RO1 switchover command')).toBe(true);
    expect(await commanded('10:05:01.001 RO1 switchover command')).toBe(false);
    expect(await commanded()).toBe(false);
  });

  test('is not known where no log ever records one', async () => {
    expect((await onlySwitchover([...begin, ...exchange, end])).commanded).toBeNull();
  });

  test('may lie anywhere in the bounds of a polled switchover, and 30 s before the first', async () => {
    const poll = pollText(['10:00:00', '10:10:00'], 10, [
      ['RO1-A', 'role', ['10:00:00', 'active'], ['10:05:00', 'standby']],
      ['RO1-B', 'role', ['10:00:00', 'standby'], ['10:05:00', 'active']],
    ]);
    const beside = async (clock: string): Promise<boolean | null> => {
      const log = ['10:00:00 RO1 A link a up', `${clock} RO1 switchover command`, '10:10:00 RO1 A link b up'];
      return (await onlySwitchover({ 'poll.csv': poll, 'events.log': journalText(log.join('\n')) }))
        .commanded;
    };
    expect(await beside('10:04:20')).toBe(true);
    expect(await beside('10:04:19.999')).toBe(false);
    expect(await beside('10:05:00')).toBe(true);
    expect(await beside('10:05:00.001')).toBe(false);
  });

  test('is not known where the log that records commands does not cover the 30 s before it and its bounds', async () => {
    const poll = pollText(['10:00:00', '10:10:00'], 10, [
      ['RO1-A', 'role', ['10:00:00', 'active'], ['10:05:00', 'standby']],
      ['RO1-B', 'role', ['10:00:00', 'standby'], ['10:05:00', 'active']],
    ]);
    const covered = async (from: string, to: string, pair = 'RO1'): Promise<boolean | null> => {
      const log = [`${from} ${pair} A link a up`, `${to} ${pair} A link b up`];
      const command = from < '10:04' ? `${from} RO9 switchover command` : `${to} RO9 switchover command`;
      return (
        await onlySwitchover({
          'poll.csv': poll,
          'events.log': journalText([...log, command].sort().join('\n')),
        })
      ).commanded;
    };
    // In (10:04:50, 10:05:00]: a command counts from 10:04:20 on.
    expect(await covered('10:04:20', '10:05:00')).toBe(false);
    expect(await covered('10:04:20.001', '10:05:00')).toBeNull();
    expect(await covered('10:04:20', '10:04:59.999')).toBeNull();
    // A log that names another pair only says nothing of this one.
    expect(await covered('10:00:00', '10:10:00', 'RO9')).toBeNull();
  });

  test('may stand a second after it in a log of whole seconds', async () => {
    const whole = async (clock: string): Promise<boolean | null> =>
      (
        await onlySwitchover({
          'ro1.log': journalText(
            [
              ...begin,
              '10:05:00 RO1 A role standby',
              '10:05:00 RO1 B role active',
              `${clock} RO1 switchover command`,
              end,
            ].join('\n'),
          ).replaceAll('.000Z', 'Z'),
        })
      ).commanded;
    expect(await whole('10:05:01')).toBe(true);
    expect(await whole('10:05:02')).toBe(false);
  });

  test('may stand in field notes, which tell the minute; notes without one say nothing', async () => {
    const notes = (minute: string): string => `Pair RO1\n2026-03-14\n${minute} switchover commanded\n`;
    const log = journalText([...begin, ...exchange, end].join('\n'));
    const noted = async (minute: string): Promise<boolean | null> =>
      (await onlySwitchover({ 'ro1.log': log, 'notes.txt': notes(minute) })).commanded;
    expect(await noted('10:05')).toBe(true);
    expect(await noted('10:06')).toBeNull();
    expect(await noted('10:03')).toBeNull();
    // A poll beside them, read all the time, logs no commands.
    const ready = pollText(['10:00:00', '10:30:00'], 10, [['RO1', 'partner-ready', ['10:00:00', 'yes']]]);
    const files = { 'ro1.log': log, 'notes.txt': notes('10:20'), 'poll.csv': ready };
    expect((await onlySwitchover(files)).commanded).toBeNull();
  });
});
