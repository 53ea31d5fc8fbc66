import { describe, expect, test } from 'vitest';
import type { Signal } from '../../../src/vocabulary.ts';
import { type Polled, pollText } from '../../support/clean-swap.ts';
import { eventLine, factsOfPair, whenOf } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

type Values = readonly (readonly [string, string])[];
const happened: readonly Signal[] = ['removed', 'inserted', 'restart', 'reflash-start', 'reflash-end'];
const roles = '10:00:00 RO1 A role active\n10:00:00 RO1 B role standby';

/** What happened to half B by a poll every 10 s from 10:00:00 to 10:10:00, and a journal beside it. */
async function events(
  polled: Readonly<Record<string, Values>>,
  ...lines: readonly string[]
): Promise<readonly string[]> {
  const columns = Object.entries(polled).map(([name, values]): Polled => ['RO1-B', name, ...values]);
  const journal = journalText([...roles.split('\n'), ...lines, '10:10:00 RO1 A light off'].join('\n'));
  const { timeline } = await factsOfPair({
    'poll.csv': pollText(['10:00:00', '10:10:00'], 10, columns),
    'ro1.log': journal,
  });
  return timeline.events
    .filter((e) => happened.includes(e.signal))
    .map((e) => eventLine(e).replace(' - was -', ''));
}
const gone = ['10:05:00', ''] as const;
const old = ['10:00:00', 'T2-1'] as const;

describe('what a poll of serials shows', () => {
  test('another one at the next reading: removed and inserted in between', async () => {
    expect(await events({ serial: [old, ['10:05:00', 'T4-2']] })).toEqual([
      '10:04:50..10:05:00 B removed',
      '10:04:50..10:05:00 B inserted',
    ]);
  });

  test('none any more: removed', async () => {
    expect(await events({ serial: [old, gone] })).toEqual(['10:04:50..10:05:00 B removed']);
    expect(
      await events({
        serial: [
          ['10:00:00', ''],
          ['10:05:00', 'T2-1'],
        ],
      }),
    ).toEqual([]);
  });

  test('the same again: a restart, unless a log says what it was', async () => {
    const serial: Values = [old, gone, ['10:06:00', 'T2-1']];
    const words = async (...lines: readonly string[]): Promise<readonly string[]> =>
      (await events({ serial }, ...lines)).map((line) => line.replace(/^\S+ /, ''));
    expect(await words()).toEqual(['B restart']);
    // From two minutes before it was last read, at 10:04:50, to 30 s after it was read again.
    expect(await words('10:02:50.001 RO1 B reflash start')).toEqual(['B reflash-start']);
    expect(await words('10:02:50 RO1 B reflash start')).toEqual(['B reflash-start', 'B restart']);
    expect(await words('10:06:30 RO1 B module restart')).toEqual(['B restart']);
    expect(await words('10:06:30.001 RO1 B module restart')).toEqual(['B restart', 'B restart']);
    expect(await words('10:05:00 RO1 A module restart')).toEqual(['A restart', 'B restart']);
    expect(await words('10:04:55 RO1 B reflash start', '10:05:55 RO1 B reflash end')).toEqual([
      'B reflash-start',
      'B reflash-end',
    ]);
    expect(await words('10:04:55 RO1 B module removed', '10:05:55 RO1 B module inserted')).toEqual([
      'B removed',
      'B inserted',
    ]);
  });

  test('is not said again where a log told of it up to 30 s later', async () => {
    const serial: Values = [old, gone];
    expect(await events({ serial }, '10:04:55 RO1 B module removed')).toEqual(['10:04:55 B removed']);
    expect(await events({ serial }, '10:05:30 RO1 B module removed')).toEqual(['10:05:30 B removed']);
    expect(await events({ serial }, '10:05:30.001 RO1 B module removed')).toEqual([
      '10:04:50..10:05:00 B removed',
      '10:05:30.001 B removed',
    ]);
    const replaced: Values = [old, ['10:05:00', 'T4-2']];
    expect(
      await events({ serial: replaced }, '10:04:52 RO1 B module removed', '10:04:58 RO1 B module inserted'),
    ).toEqual(['10:04:52 B removed', '10:04:58 B inserted']);
    // A removal from before this module came is another one.
    expect(
      await events(
        { serial: [['10:00:00', ''], ['10:01:00', 'T2-1'], gone] },
        '10:00:30 RO1 B module removed',
      ),
    ).toEqual(['10:00:30 B removed', '10:04:50..10:05:00 B removed']);
  });

  test('is not said again where a log told of it up to one spacing later, of a poll slower than half a minute', async () => {
    // Read every minute: gone in (10:04:00, 10:05:00], and the log may tell of it up to 10:06:00.
    const removals = async (clock: string): Promise<readonly string[]> => {
      const { timeline } = await factsOfPair({
        'poll.csv': pollText(['10:00:00', '10:10:00'], 60, [['RO1-B', 'serial', old, gone]]),
        'ro1.log': journalText(`${roles}\n${clock} RO1 B module removed`),
      });
      return timeline.events.filter((e) => e.signal === 'removed').map(whenOf);
    };
    expect(await removals('10:06:00')).toEqual(['10:06:00']);
    expect(await removals('10:06:00.001')).toEqual(['10:04:00..10:05:00', '10:06:00.001']);
  });

  test('models show it where no serial is read', async () => {
    expect(
      await events({
        model: [
          ['10:00:00', 'Tern-2'],
          ['10:05:00', 'Tern-4'],
        ],
      }),
    ).toEqual(['10:04:50..10:05:00 B removed', '10:04:50..10:05:00 B inserted']);
    expect(
      await events({
        serial: [old],
        model: [
          ['10:00:00', 'Tern-2'],
          ['10:05:00', 'Tern-4'],
        ],
      }),
    ).toEqual([]);
  });
});

describe('what a poll of firmware shows', () => {
  const firmware = (...values: Values): Readonly<Record<string, Values>> => ({
    firmware: [['10:00:00', '6.2.0'], ...values],
  });

  test('another release: a reflash that ended', async () => {
    expect(await events(firmware(['10:05:00', '6.4.1']))).toEqual(['10:04:50..10:05:00 B reflash-end']);
    expect(await events(firmware(gone, ['10:06:00', '6.4.1']))).toEqual(['10:05:50..10:06:00 B reflash-end']);
    expect(await events(firmware(gone, ['10:06:00', '6.2.0']))).toEqual([]);
    expect(
      await events({
        firmware: [
          ['10:00:00', ''],
          ['10:05:00', '6.4.1'],
        ],
      }),
    ).toEqual([]);
  });

  test('is not said again where a log told of its end', async () => {
    expect(await events(firmware(['10:05:00', '6.4.1']), '10:05:30 RO1 B reflash end')).toEqual([
      '10:05:30 B reflash-end',
    ]);
    expect(await events(firmware(['10:05:00', '6.4.1']), '10:05:30.001 RO1 B reflash end')).toEqual([
      '10:04:50..10:05:00 B reflash-end',
      '10:05:30.001 B reflash-end',
    ]);
  });

  test('is that of a new module where one came in; the next change is a reflash', async () => {
    const serial: Values = [old, ['10:05:00', 'T4-2']];
    const came = ['10:04:50..10:05:00 B removed', '10:04:50..10:05:00 B inserted'];
    expect(await events({ serial, ...firmware(['10:06:00', '6.3.0']) })).toEqual(came);
    expect(await events({ serial, ...firmware(['10:06:00', '6.3.0'], ['10:08:00', '6.4.1']) })).toEqual([
      ...came,
      '10:07:50..10:08:00 B reflash-end',
    ]);
    const logged = ['10:05:05 RO1 B module inserted'];
    expect(await events(firmware(['10:06:00', '6.3.0']), ...logged)).toEqual(['10:05:05 B inserted']);
  });

  test('may be read of a new module shortly before its serial is', async () => {
    const serial: Values = [old, ['10:05:00', 'T4-2']];
    expect(await events({ serial, ...firmware(['10:04:40', '6.3.0']) })).toEqual([
      '10:04:50..10:05:00 B removed',
      '10:04:50..10:05:00 B inserted',
    ]);
  });

  test('what was logged when a module came is not what happened when the next one did', async () => {
    const serial: Values = [
      ['10:00:00', ''],
      ['10:01:00', 'T2-1'],
      ['10:05:00', 'T4-2'],
    ];
    expect(await events({ serial }, '10:01:20 RO1 B module inserted')).toEqual([
      '10:01:20 B inserted',
      '10:04:50..10:05:00 B removed',
      '10:04:50..10:05:00 B inserted',
    ]);
  });
});
