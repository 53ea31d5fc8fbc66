import { describe, expect, test } from 'vitest';
import { pollText } from '../../support/clean-swap.ts';
import { journalText } from '../../support/read-text.ts';
import { exchanged, roles } from '../../support/role-words.ts';

const end = '10:30:00 RO1 A link a up';

describe('a switchover that is logged as such', () => {
  test('exchanges the roles that were stated before', async () => {
    const story = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1 B role standby',
      '10:10:00 RO1 switchover',
      end,
    ];
    expect(await roles(story)).toEqual([
      '10:00:00 A active',
      '10:00:00 B standby',
      '10:10:00 A standby',
      '10:10:00 B active',
    ]);
    expect(await exchanged(story)).toEqual(['10:10:00 A>B']);
  });

  test('exchanges them back where the same unit logs another twenty seconds later; what the other unit logs is the first', async () => {
    const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
    expect(await exchanged([...begin, '10:10:00 RO1 switchover', '10:10:20 RO1 switchover', end])).toEqual([
      '10:10:00 A>B',
      '10:10:20 B>A',
    ]);
    const two = [...begin, '10:10:00 RO1 A switchover', '10:10:20 RO1 B switchover', end];
    expect((await roles(two)).slice(2)).toEqual(['10:10:00 A standby', '10:10:00 B active']);
  });

  test('without a word on roles or halves exchanges those of 1, active when the log begins, and 2', async () => {
    const story = ['10:00:00 RO1 partner ready', '10:10:00 RO1 switchover', '10:30:00 RO1 partner ready'];
    expect(await roles(story)).toEqual([
      '10:00:00 1 active',
      '10:00:00 2 standby',
      '10:10:00 1 standby',
      '10:10:00 2 active',
    ]);
    expect(await exchanged(story)).toEqual(['10:10:00 1>2']);
  });

  test('without a word on roles, of halves that have names, is one from and to no one knows whom', async () => {
    const story = ['10:00:00 RO1 A link a up', '10:00:00 RO1 B link a up', '10:10:00 RO1 switchover', end];
    expect(await roles(story)).toEqual([]);
    expect(await exchanged(story)).toEqual(['10:10:00 ?>?']);
  });

  test('exchanges the roles though the half that takes the active one says so a quarter of an hour later', async () => {
    const story = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1 B role standby',
      '10:05:00 RO1 switchover',
      '10:20:00 RO1 B role active',
      end,
    ];
    expect(await roles(story)).toEqual([
      '10:00:00 A active',
      '10:00:00 B standby',
      '10:05:00 A standby',
      '10:05:00 B active',
    ]);
    expect(await exchanged(story)).toEqual(['10:05:00 A>B']);
  });

  test('changes no role that a poll goes on to read as it was', async () => {
    const story = {
      'poll.csv': pollText(['10:00:00', '10:30:00'], 10, [
        ['RO1-A', 'role', ['10:00:00', 'active']],
        ['RO1-B', 'role', ['10:00:00', 'standby']],
      ]),
      'ro1.log': journalText(
        '10:00:00 RO1 partner ready\n10:05:00 RO1 switchover\n10:30:00 RO1 partner ready',
      ),
    };
    expect(await roles(story)).toEqual(['10:00:00 A active', '10:00:00 B standby']);
    // From and to whom is not known: the lines state no such thing.
    expect(await exchanged(story)).toEqual(['10:05:00 ?>?']);
  });

  test('gives the active role to no half where one says that it left, and the other, which says its role, does not take it', async () => {
    const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
    const left = [...begin, '10:10:00 RO1 switchover', '10:10:00 RO1 A role standby'];
    const steps = ['10:00:00 A active', '10:00:00 B standby', '10:10:00 A standby'];
    expect(await roles([...left, end])).toEqual(steps);
    expect(await exchanged([...left, end])).toEqual(['10:10:00 ?>?', '10:10:00-10:30:00 none-active']);
    // The same once the other half says, 11 s later, that it took over.
    const taken = [...left, '10:10:11 RO1 B role active', end];
    expect(await roles(taken)).toEqual([...steps, '10:10:11 B active']);
    expect(await exchanged(taken)).toEqual(['10:10:00 A>B', '10:10:00-10:10:11 none-active']);
  });

  test('is no second one where the roles are stated beside it', async () => {
    const story = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1 B role standby',
      '10:10:00 RO1 switchover',
      '10:10:01 RO1 A role standby',
      '10:10:02 RO1 B role active',
      end,
    ];
    expect(await exchanged(story)).toHaveLength(2);
    expect((await exchanged(story))[0]).toMatch(/ A>B$/);
  });
});

describe('a half that leaves the active role and takes it again', () => {
  const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];

  test('has not passed it on: neither half was active in between', async () => {
    for (const value of ['none', 'standby'])
      expect(
        await exchanged([...begin, `10:10:00 RO1 A role ${value}`, '10:12:40 RO1 A role active', end]),
      ).toEqual(['10:10:00-10:12:40 none-active']);
  });

  test('has passed it on where the other half took it in between', async () => {
    expect(
      await exchanged([
        ...begin,
        '10:10:00 RO1 A role none',
        '10:10:03 RO1 B role active',
        '10:12:00 RO1 B role standby',
        '10:12:01 RO1 A role active',
        end,
      ]),
    ).toEqual([
      '10:10:00 A>B',
      '10:12:00 B>A',
      '10:10:00-10:10:03 none-active',
      '10:12:00-10:12:01 none-active',
    ]);
  });

  test('by a poll the same', async () => {
    const story = {
      'poll.csv': pollText(['10:00:00', '10:30:00'], 10, [
        ['RO1-A', 'role', ['10:00:00', 'active'], ['10:10:00', 'none'], ['10:12:40', 'active']],
        ['RO1-B', 'role', ['10:00:00', 'standby']],
      ]),
    };
    expect(await exchanged(story)).toEqual(['10:10:00-10:12:40 none-active']);
  });
});
