import { describe, expect, test } from 'vitest';
import { pollText } from '../../support/clean-swap.ts';
import { factsOfPair, type Told } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';
import {
  eventsTold as events,
  polledRoles as polled,
  switchoversTold as switchovers,
} from '../../support/role-polls.ts';

const first = '10:00:00';
const then = '10:05:00';

describe('an export that names roles only', () => {
  test('shows a switchover by the exchange of the serials; each half keeps its own', async () => {
    const story = polled(
      ['active serial', [first, 'T4-1'], [then, 'T4-2']],
      ['standby serial', [first, 'T4-2'], [then, 'T4-1']],
      ['active firmware', [first, '6.4.1'], [then, '6.2.0']],
      ['standby firmware', [first, '6.2.0'], [then, '6.4.1']],
    );
    expect(await switchovers(story)).toEqual(['10:04:50..10:05:00 1>2']);
    expect(await events(story, 'serial', 'firmware', 'role')).toEqual([
      '10:00:00 1 role active was -',
      '10:00:00 2 role standby was -',
      '10:00:00 1 serial T4-1 was -',
      '10:00:00 2 serial T4-2 was -',
      '10:00:00 1 firmware 6.4.1 was -',
      '10:00:00 2 firmware 6.2.0 was -',
      '10:04:50..10:05:00 1 role standby was active',
      '10:04:50..10:05:00 2 role active was standby',
    ]);
  });

  test('shows two of them as two, there and back', async () => {
    const story = polled(
      ['active serial', [first, 'T4-1'], [then, 'T4-2'], ['10:07:00', 'T4-1']],
      ['standby serial', [first, 'T4-2'], [then, 'T4-1'], ['10:07:00', 'T4-2']],
    );
    expect(await switchovers(story)).toEqual(['10:04:50..10:05:00 1>2', '10:06:50..10:07:00 2>1']);
  });

  test('shows it where the standby is read before the active half', async () => {
    const rows = (seconds: string, role: string, one: string, other: string): readonly string[] =>
      pollText([`10:00:0${seconds}`, '10:10:00'], 10, [
        ['RO1', `${role} serial`, ['10:00:00', one], [then, other]],
      ])
        .trimEnd()
        .split('\n');
    const [header = '', ...standby] = rows('0', 'standby', 'T4-2', 'T4-1');
    const active = rows('5', 'active', 'T4-1', 'T4-2').slice(1);
    const story = { 'poll.csv': `${[header, ...[...standby, ...active].sort()].join('\n')}\n` };
    // What both say: (10:04:50, 10:05:00] of the standby and (10:04:55, 10:05:05] of the active half.
    expect(await switchovers(story)).toEqual(['10:04:55..10:05:00 1>2']);
    expect((await events(story, 'serial')).map((line) => line.split(' ').slice(1, 4).join(' '))).toEqual([
      '2 serial T4-2',
      '1 serial T4-1',
    ]);
  });

  test('shows none where the standby is replaced', async () => {
    const story = polled(
      ['active serial', [first, 'T4-1']],
      ['standby serial', [first, 'T4-2'], [then, ''], ['10:06:00', 'T4-3']],
    );
    expect(await switchovers(story)).toEqual([]);
    expect(await events(story, 'serial', 'removed')).toEqual([
      '10:00:00 1 serial T4-1 was -',
      '10:00:00 2 serial T4-2 was -',
      '10:04:50..10:05:00 2 removed - was -',
      '10:04:50..10:05:00 2 serial - was T4-2',
      '10:05:50..10:06:00 2 serial T4-3 was -',
    ]);
  });

  test('shows it by the models where no serial is read, and by the firmware where no model is', async () => {
    for (const [name, one, other] of [
      ['model', 'Tern-2', 'Tern-4'],
      ['firmware', '6.2.0', '6.4.1'],
    ] as const) {
      const story = polled(
        [`active ${name}`, [first, one], [then, other]],
        [`standby ${name}`, [first, other], [then, one]],
      );
      expect(await switchovers(story)).toEqual(['10:04:50..10:05:00 1>2']);
      expect(await events(story, name)).toEqual([
        `10:00:00 1 ${name} ${one} was -`,
        `10:00:00 2 ${name} ${other} was -`,
      ]);
    }
  });

  test('shows none where the standby is only reflashed to the firmware of the active half', async () => {
    const story = polled(
      ['active firmware', [first, '6.4.1']],
      ['standby firmware', [first, '6.2.0'], [then, '6.4.1']],
    );
    expect(await switchovers(story)).toEqual([]);
    expect(await events(story, 'firmware', 'reflash-end')).toEqual([
      '10:00:00 1 firmware 6.4.1 was -',
      '10:00:00 2 firmware 6.2.0 was -',
      '10:04:50..10:05:00 2 reflash-end - was -',
      '10:04:50..10:05:00 2 firmware 6.4.1 was 6.2.0',
    ]);
  });

  test('shows none where models are exchanged but the serials stay', async () => {
    const story = polled(
      ['active serial', [first, 'T4-1']],
      ['standby serial', [first, 'T4-2']],
      ['active firmware', [first, '6.4.1'], [then, '6.2.0']],
      ['standby firmware', [first, '6.2.0'], [then, '6.4.1']],
    );
    expect(await switchovers(story)).toEqual([]);
  });

  test('is of the half whose serial another export names, or of the one that was not pulled', async () => {
    const story = polled(['active serial', [first, 'T4-1']], ['standby serial', [first, 'T4-2']]);
    const beside = (text: string): Told => ({ ...story, 'ro1.log': journalText(text) });
    expect(await events(beside('10:00:01 RO1 B serial T4-1\n10:10:00 RO1 A link a up'), 'serial')).toEqual([
      '10:00:00 A serial T4-2 was -',
      '10:00:00 B serial T4-1 was -',
    ]);
    expect(await events(beside('10:00:01 RO1 B serial T4-2\n10:10:00 RO1 A link a up'), 'serial')).toEqual([
      '10:00:00 A serial T4-1 was -',
      '10:00:00 B serial T4-2 was -',
    ]);
    expect(
      (await events(beside('10:09:00 RO1 A module removed\n10:10:00 RO1 B link a up'), 'serial')).slice(0, 2),
    ).toEqual(['10:00:00 A serial T4-2 was -', '10:00:00 B serial T4-1 was -']);
  });

  test('gives gauges to the half that held the role', async () => {
    const { timeline } = await factsOfPair(
      polled(
        ['active serial', [first, 'T4-1'], [then, 'T4-2']],
        ['standby serial', [first, 'T4-2'], [then, 'T4-1']],
        ['active load', [first, '40'], [then, '60']],
      ),
    );
    // Bins of five minutes, from 10:00, 10:05 and 10:10 on.
    const bins = timeline.gauges.map((g) => [g.half, g.gauge, ...g.bins.map((b) => b.mean)]);
    expect(bins).toEqual([
      ['1', 'load', 40],
      ['2', 'load', 60, 60],
    ]);
  });

  test('gives gauges of several files in the order of time', async () => {
    const load = (from: string, to: string, percent: string): string =>
      pollText([from, to], 10, [['RO1-A', 'load', ['10:00:00', percent]]]);
    const { timeline } = await factsOfPair({
      'a.csv': load('10:10:00', '10:14:00', '40'),
      'b.csv': load('10:00:00', '10:04:00', '30'),
    });
    expect(timeline.gauges.map((g) => [g.half, ...g.bins.map((b) => b.mean)])).toEqual([['A', 30, 40]]);
  });

  test('goes on under the new roles after a switchover that a journal tells', async () => {
    const roles = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
    const exchange = ['10:05:03 RO1 A role standby', '10:05:03 RO1 B role active'];
    const story = {
      ...polled(
        ['active firmware', [first, '6.4.1'], ['10:05:03', '6.2.0']],
        ['standby firmware', [first, '6.2.0'], ['10:05:03', '6.4.1']],
        ['standby light', [first, 'steady']],
      ),
      'ro1.log': journalText([...roles, ...exchange].join('\n')),
    };
    expect(await events(story, 'firmware')).toEqual([
      '10:00:00 A firmware 6.4.1 was -',
      '10:00:00 B firmware 6.2.0 was -',
    ]);
    // The light of the standby went on being read as steady: it is now that of half A.
    const lights = (await factsOfPair(story)).timeline.events.filter((e) => e.signal === 'light');
    expect(lights.map((e) => `${e.half} ${e.value}`)).toEqual(['B steady', 'A steady']);
  });
});
