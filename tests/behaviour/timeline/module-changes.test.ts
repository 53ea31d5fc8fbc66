import { describe, expect, test } from 'vitest';
import type { Identity } from '../../../src/timeline/module-changes.ts';
import { pollText } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair, type Told } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
const end = '10:30:00 RO1 A light off';
const out = '10:10:00 RO1 B module removed';
const back = '10:11:00 RO1 B module inserted';

async function changes(story: Told): Promise<readonly string[]> {
  return (await factsOfPair(story)).moduleChanges.map(
    ({ half, removed, inserted }) =>
      `${half} ${clockOf(removed.time)} ${inserted === null ? 'not back' : clockOf(inserted.time)}`,
  );
}
const of = (...lines: readonly string[]): Promise<readonly string[]> =>
  changes([...begin, ...lines, end].sort());

describe('another module', () => {
  test('is one with another serial, whatever else; the same serial is the same module', async () => {
    const before = ['10:00:00 RO1 B serial T4-1', '10:00:00 RO1 B model Tern-4'];
    expect(await of(...before, out, back, '10:11:00 RO1 B serial T4-2')).toEqual(['B 10:10:00 10:11:00']);
    expect(await of(...before, out, back, '10:11:00 RO1 B serial T4-1')).toEqual([]);
    expect(await of(...before, out, '10:15:00 RO1 B module inserted', '10:15:00 RO1 B serial T4-1')).toEqual(
      [],
    );
  });

  test('without a serial is one with another model, or one that was out for more than two minutes', async () => {
    const model = '10:00:00 RO1 B model Tern-2';
    expect(await of(model, out, back, '10:11:00 RO1 B model Tern-4')).toEqual(['B 10:10:00 10:11:00']);
    expect(await of(model, out, back)).toEqual([]);
    expect(await of(model, out, '10:12:00 RO1 B module inserted')).toEqual([]);
    expect(await of(model, out, '10:12:00.001 RO1 B module inserted')).toEqual(['B 10:10:00 10:12:00.001']);
    expect(await of(out, back)).toEqual([]);
    expect(await of(out, '10:13:00 RO1 B module inserted')).toEqual(['B 10:10:00 10:13:00']);
    // The serial that was goes with its module: what came has said no serial, and another model.
    const before = ['10:00:00 RO1 B serial T4-1', '10:00:00 RO1 B model Tern-4'];
    expect(await of(...before, out, back, '10:11:00 RO1 B model Tern-2')).toEqual(['B 10:10:00 10:11:00']);
    expect(await of(...before, out, back, '10:11:00 RO1 B model Tern-4')).toEqual([]);
    // A model or a serial on one side only decides nothing.
    expect(await of(out, back, '10:11:00 RO1 B model Tern-4')).toEqual([]);
    expect(await of('10:00:00 RO1 B serial T4-1', out, back, '10:11:00 RO1 A serial T4-9')).toEqual([]);
    expect(await of(out, back, '10:11:00 RO1 B serial T4-2')).toEqual([]);
  });

  test('without a serial is one that by field notes, which tell the minute only, may have been out for longer than that', async () => {
    const noted = (clock: string): Promise<readonly string[]> => {
      const lines = [
        'Pair RO1',
        '2026-03-14',
        '10:10 pulled standby from slot B',
        `${clock} fitted module in slot B`,
      ];
      return changes({
        'ro1.log': journalText([...begin, end].join('\n')),
        'notes.txt': `${lines.join('\n')}\n`,
      });
    };
    // From 10:10:00 at the earliest to 10:12:00 at the latest: two minutes at most. The log goes on for longer than 15 min.
    expect(await noted('10:11')).toEqual([]);
    // To 10:13:00 at the latest: three minutes at most.
    expect(await noted('10:12')).toEqual(['B 10:11:00 10:13:00']);
  });

  test('is awaited where a logged removal is not followed by an insertion in the same half', async () => {
    expect(await of(out)).toEqual(['B 10:10:00 not back']);
    expect(await of(out, '10:15:00 RO1 A module inserted')).toEqual(['B 10:10:00 not back']);
  });

  test('is one where a log tells of it within one spacing after a poll showed it', async () => {
    // Every minute: gone at 10:10, another in its place at 10:15; the log has the removal 40 s and the insertion 30 s later.
    const polled = pollText(['10:00:00', '10:30:00'], 60, [
      ['RO1-B', 'serial', ['10:00:00', 'T4-1'], ['10:10:00', ''], ['10:15:00', 'T4-2']],
    ]);
    const logged = (removed: string): string =>
      journalText(
        [...begin, `${removed} RO1 B module removed`, '10:15:30 RO1 B module inserted', end].join('\n'),
      );
    expect(await changes({ 'poll.csv': polled, 'ro1.log': logged('10:10:40') })).toEqual([
      'B 10:10:40 10:15:30',
    ]);
    // Later than that it is another removal, and whether the module came back before is not told.
    expect(await changes({ 'poll.csv': polled, 'ro1.log': logged('10:11:01') })).toEqual([
      'B 10:11:01 10:15:30',
    ]);
  });

  test('is found though another source told of the work at another time, as by a clock that is off', async () => {
    // The notes have half B out and back at 10:05; the poll goes on to read T4-1 until 10:15, and T4-2 from 10:18 on.
    const polled = pollText(['10:00:00', '10:30:00'], 60, [
      ['RO1-B', 'serial', ['10:00:00', 'T4-1'], ['10:15:00', ''], ['10:18:00', 'T4-2']],
    ]);
    const notes = [
      'Pair RO1',
      '2026-03-14',
      '10:05 pulled standby from slot B',
      '10:06 fitted new module in slot B',
    ];
    const story = {
      'poll.csv': polled,
      'ro1.log': journalText([...begin, end].join('\n')),
      'notes.txt': `${notes.join('\n')}\n`,
    };
    expect(await changes(story)).toEqual(['B 10:15:00 10:18:00']);
  });

  test('is none where a poll went on to read the same module: that went later, as the poll shows', async () => {
    // Noted as pulled at 10:05 and fitted at 10:09, read every 20 s until 10:39:40; another is there from 10:49 on.
    const files = {
      'notes.txt':
        'Pair RO1\n2026-03-14\n10:05 pulled standby from slot B\n10:09 fitted new module in slot B\n',
      'poll.csv': pollText(['10:00:00', '11:00:00'], 20, [
        ['RO1-B', 'serial', ['10:00:00', 'T4-1'], ['10:40:00', ''], ['10:49:00', 'T4-2']],
      ]),
    };
    expect(await changes(files)).toEqual(['B 10:40:00 10:49:00']);
  });

  test('is none where nothing was removed', async () => {
    expect(await of('10:09:00 RO1 B module inserted', '10:15:00 RO1 B module inserted')).toEqual([]);
  });

  test('is none where only a poll shows that a module is gone: it may start up again', async () => {
    const polled = (...serials: (readonly [string, string])[]): Told => ({
      'poll.csv': pollText(['10:00:00', '10:30:00'], 10, [
        ['RO1-B', 'serial', ['10:00:00', 'T4-1'], ['10:10:00', ''], ...serials],
      ]),
    });
    expect(await changes(polled())).toEqual([]);
    expect(await changes(polled(['10:20:00', 'T4-1']))).toEqual([]);
    expect(await changes(polled(['10:20:00', 'T4-2']))).toEqual(['B 10:10:00 10:20:00']);
  });

  test('may be one that had no time to say what it is: a quarter of an hour from its insertion on', async () => {
    const until = async (clock: string): Promise<readonly string[]> =>
      changes([...begin, out, back, `${clock} RO1 A light off`]);
    expect(await until('10:25:59.999')).toEqual(['B 10:10:00 10:11:00']);
    expect(await until('10:26:00')).toEqual([]);
  });

  test('in both halves are two changes, in the order of their removals', async () => {
    const b = [out, '10:13:00 RO1 B module inserted'];
    const a = ['10:05:00 RO1 A module removed', '10:08:00 RO1 A module inserted'];
    expect(await of(...b, ...a)).toEqual(['A 10:05:00 10:08:00', 'B 10:10:00 10:13:00']);
  });
});

describe('what a module was and what came', () => {
  const identity = ({ model, serial, firmware }: Identity): string =>
    [model, serial, firmware].map((value) => value ?? '-').join(' ');
  const identities = async (...lines: readonly string[]): Promise<readonly unknown[]> =>
    (await factsOfPair([...begin, ...lines, end].sort())).moduleChanges.map(({ before, found }) => [
      identity(before),
      identity(found),
    ]);
  const before = [
    '10:00:00 RO1 B model Tern-2',
    '10:00:00 RO1 B serial T2-1',
    '10:00:00 RO1 B firmware 6.2.0',
  ];
  const inserted = '10:13:00 RO1 B module inserted';

  test('is the last report before the removal, and the first from it on', async () => {
    const found = [
      '10:13:00 RO1 B model Tern-4',
      '10:13:05 RO1 B serial T4-2',
      '10:13:10 RO1 B firmware 6.3.0',
    ];
    const later = ['10:20:00 RO1 B firmware 6.4.1'];
    expect(await identities(...before, out, inserted, ...found, ...later)).toEqual([
      ['Tern-2 T2-1 6.2.0', 'Tern-4 T4-2 6.3.0'],
    ]);
  });

  test('is not known where nothing was said after the removal', async () => {
    expect(await identities(...before, out, inserted, '10:13:00 RO1 B serial T4-2')).toEqual([
      ['Tern-2 T2-1 6.2.0', '- T4-2 -'],
    ]);
  });

  test('is not what was reported only after the next removal, nor what the module before the last one was', async () => {
    const again = ['10:20:00 RO1 B module removed', '10:20:01 RO1 B firmware 6.4.1'];
    expect(await identities(...before, out, inserted, '10:13:00 RO1 B serial T4-2', ...again)).toEqual([
      ['Tern-2 T2-1 6.2.0', '- T4-2 -'],
      ['- T4-2 -', '- - -'],
    ]);
  });

  test('is what was said in the very stamp of its removal; that is not what the next one was', async () => {
    const again = '10:20:00 RO1 B module removed';
    expect(await identities('10:10:00 RO1 B serial T2-1', out, inserted, again)).toEqual([
      ['- T2-1 -', '- - -'],
      ['- - -', '- - -'],
    ]);
  });
});
