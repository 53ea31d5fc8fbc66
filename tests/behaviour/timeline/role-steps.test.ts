import { describe, expect, test } from 'vitest';
import { timelineCsv, timelineJsonLines } from '../../../src/report/timeline-documents.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { staffOf } from '../../../src/timeline/staff.ts';
import { at, pollText } from '../../support/clean-swap.ts';
import { factsOfPair, whenOf } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';
import { exchanged, roles } from '../../support/role-words.ts';

const end = '10:30:00 RO1 A link a up';

describe('a role that no line ever states', () => {
  const one = ['10:00:00 RO1 A role active', '10:05:00 RO1 B light steady', end];

  test('is concluded from active or standby of the other half', async () => {
    expect(await roles(one)).toEqual(['10:00:00 A active', '10:00:00 B (standby)']);
    expect(await roles(['10:00:00 RO1 A role standby', ...one.slice(1)])).toEqual([
      '10:00:00 A standby',
      '10:00:00 B (active)',
    ]);
  });

  test('is not known where the other half has none', async () => {
    expect(await roles(['10:00:00 RO1 A role active', '10:10:00 RO1 A role none', ...one.slice(1)])).toEqual([
      '10:00:00 A active',
      '10:00:00 B (standby)',
      '10:10:00 A none',
      '10:10:00 B (unknown)',
    ]);
  });

  test('makes no switchover and no conflict', async () => {
    const story = [
      ...one.slice(0, 2),
      '10:10:00 RO1 A role standby',
      '10:15:00 RO1 A role active',
      '10:20:00 RO1 A role none',
      end,
    ];
    expect((await roles(story)).slice(2)).toEqual([
      '10:10:00 A standby',
      '10:10:00 B (active)',
      '10:15:00 A active',
      '10:15:00 B (standby)',
      '10:20:00 A none',
      '10:20:00 B (unknown)',
    ]);
    expect(await exchanged(story)).toEqual([]);
  });

  test('is none while its module is out, and not known from the insertion on until the other half says more', async () => {
    const story = [
      ...one.slice(0, 2),
      '10:10:00 RO1 B module removed',
      '10:12:00 RO1 B module inserted',
      '10:20:00 RO1 A role standby',
      end,
    ];
    expect((await roles(story)).slice(2)).toEqual([
      '10:10:00 B none',
      '10:12:00 B unknown',
      '10:20:00 A standby',
      '10:20:00 B (active)',
    ]);
  });

  test('is none as long as its module is out, whatever the other half becomes meanwhile', async () => {
    const story = [
      ...one.slice(0, 2),
      '10:10:00 RO1 B module removed',
      '10:11:00 RO1 A role standby',
      '10:12:00 RO1 B module inserted',
      end,
    ];
    expect((await roles(story)).slice(2)).toEqual([
      '10:10:00 B none',
      '10:11:00 A standby',
      '10:12:00 B unknown',
    ]);
  });

  test('is not concluded any more where a line states it, if only once and late', async () => {
    expect(await roles([...one.slice(0, 2), '10:20:00 RO1 B role standby', end])).toEqual([
      '10:00:00 A active',
      '10:20:00 B standby',
    ]);
  });
});

describe('a concluded role is marked', () => {
  const story = ['10:00:00 RO1 A role active', '10:05:00 RO1 B light steady', end];

  test('in the timeline as CSV and as JSON lines', async () => {
    const { timeline } = await factsOfPair(story);
    const csv = [...timelineCsv([timeline])].join('').split('\r\n');
    const marked = csv.filter((line) => line.includes(',role,'));
    expect(marked.map((line) => line.split(',').slice(3, 8))).toEqual([
      ['A', 'role', 'active', '', ''],
      ['B', 'role', 'standby', '', 'concluded'],
    ]);
    const lines = [...timelineJsonLines([timeline])].join('').trimEnd().split('\n');
    const told = lines.map((line): unknown => JSON.parse(line));
    expect(told.slice(0, 2)).toMatchObject([
      { half: 'A', signal: 'role', value: 'active', concluded: false },
      { half: 'B', signal: 'role', value: 'standby', concluded: true },
    ]);
  });

  test('in the staff, where it begins to be drawn, and only there', async () => {
    const ticks = async (from: string, to: string): Promise<readonly string[]> =>
      staffOf(await factsOfPair(story), at(from), at(to), defaultRules).ticks.map(
        (t) => `${whenOf(t)} ${t.half} ${t.word}`,
      );
    expect(await ticks('10:00:00', '10:30:00')).toEqual(['10:00:00 B role concluded']);
    expect(await ticks('10:10:00', '10:20:00')).toEqual(['10:10:00 B role concluded']);
    const stated = [...story.slice(0, 2), '10:00:00 RO1 B role standby', end].sort();
    expect(staffOf(await factsOfPair(stated), at('10:00:00'), at('10:30:00'), defaultRules).ticks).toEqual(
      [],
    );
  });
});

describe('a module that is out', () => {
  const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
  const work = ['10:10:00 RO1 B module removed', '10:12:00 RO1 B module inserted'];

  test('has the role none, and what comes none that is known until a line states it', async () => {
    expect((await roles([...begin, ...work, '10:14:00 RO1 B role standby', end])).slice(2)).toEqual([
      '10:10:00 B none',
      '10:12:00 B unknown',
      '10:14:00 B standby',
    ]);
  });

  test('whose role is stated at its insertion, or up to half a minute before by another clock, keeps that', async () => {
    expect((await roles([...begin, ...work, '10:12:00 RO1 B role standby', end])).slice(2)).toEqual([
      '10:10:00 B none',
      '10:12:00 B standby',
    ]);
    const early = { 'a.log': journalText([...begin, ...work, end].join('\n')) };
    const text = journalText('10:11:31 RO1 B role standby\n10:30:00 RO1 B link a up');
    expect((await roles({ ...early, 'b.log': text })).slice(2)).toEqual([
      '10:10:00 B none',
      '10:11:31 B standby',
    ]);
  });

  test('and in again between two readings of a poll has the role that the poll goes on to read', async () => {
    const story = {
      'poll.csv': pollText(['10:00:00', '10:10:00'], 10, [
        ['RO1-A', 'role', ['10:00:00', 'active']],
        ['RO1-A', 'serial', ['10:00:00', 'T4-1'], ['10:05:00', 'T4-2']],
        ['RO1-B', 'role', ['10:00:00', 'standby']],
      ]),
    };
    expect(await roles(story)).toEqual([
      '10:00:00 A active',
      '10:00:00 B standby',
      '10:04:50..10:05:00 A none',
      '10:04:50..10:05:00 A active',
    ]);
  });

  test('leaves no half active where it was the active one, until the other takes the role', async () => {
    const active = ['10:00:00 RO1 A role standby', '10:00:00 RO1 B role active'];
    expect(await exchanged([...active, ...work, '10:10:05 RO1 A role active', end].sort())).toEqual([
      '10:10:00 B>A',
      '10:10:00-10:10:05 none-active',
    ]);
  });
});
