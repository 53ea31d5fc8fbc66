import { describe, expect, test } from 'vitest';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { staffOf } from '../../../src/timeline/staff.ts';
import { at, pollText } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair, type Told } from '../../support/pair-facts.ts';

const start = [
  '10:00:00 RO1 A role active',
  '10:00:00 RO1 B role standby',
  '10:00:00 RO1 A firmware 6.4.1',
  '10:00:00 RO1 B firmware 6.4.1',
  '10:00:00 RO1 partner ready',
];
const end = '10:30:00 RO1 A light off';

async function states(story: Told, from = '10:00:00', to = '10:30:00'): Promise<readonly string[]> {
  const { states: found } = staffOf(await factsOfPair(story), at(from), at(to), defaultRules);
  return found.map(
    (s) =>
      `${s.kind}${s.half === null ? '' : ` ${s.half}`} ${clockOf(s.from)}-${clockOf(s.to)} ${s.seconds} s${s.losses > 0 ? ` ${s.losses} losses` : ''}${s.goesOn ? ' goes on' : ''}`,
  );
}

describe('what is not as it should be on the staff', () => {
  test('is nothing of a sound pair', async () => {
    expect(await states([...start, end])).toEqual([]);
  });

  test('is a pair without a ready partner, at its whole length where a window cuts it', async () => {
    const story = [...start, '10:10:00 RO1 partner not ready', '10:12:30 RO1 partner ready', end];
    expect(await states(story)).toEqual(['no-ready-partner 10:10:00-10:12:30 150 s']);
    expect(await states(story, '10:11:00', '10:12:00')).toEqual(['no-ready-partner 10:11:00-10:12:00 150 s']);
    expect(await states(story, '10:13:00', '10:14:00')).toEqual([]);
    const open = story.filter((line) => !line.startsWith('10:12:30'));
    expect(await states(open)).toEqual(['no-ready-partner 10:10:00-10:30:00 1200 s goes on']);
  });

  test('is two active halves or none for longer than the moment that a switchover takes', async () => {
    const story = [...start, '10:10:00 RO1 B role active', '10:10:12 RO1 A role standby', end];
    expect(await states(story)).toEqual(['two-active 10:10:00-10:10:12 12 s']);
    const brief = [...start, '10:10:00 RO1 A role standby', '10:10:01 RO1 B role active', end];
    expect(await states(brief)).toEqual([]);
  });

  test('is a bring-up past its limit, from its flag on', async () => {
    const story = [
      ...start,
      '10:05:00 RO1 B restart',
      '10:05:01 RO1 partner not ready',
      '10:12:00 RO1 partner ready',
      end,
    ];
    // Five minutes from 10:05 end at 10:10; it was ready at 10:12.
    expect(await states(story)).toEqual([
      'no-ready-partner 10:05:01-10:12:00 419 s',
      'past-limit B 10:10:00-10:12:00 120 s',
    ]);
  });

  test('is firmware that differs while nobody works on the pair', async () => {
    const story = [...start, '10:10:00 RO1 B firmware 6.2.0', '10:20:00 RO1 B firmware 6.4.1', end];
    expect(await states(story)).toContain('firmware-differs 10:10:00-10:20:00 600 s');
  });

  test('is flapping from the first to the last loss', async () => {
    const losses = [2, 3, 4, 5, 6].flatMap((minute) => [
      `10:0${minute}:00 RO1 partner not ready`,
      `10:0${minute}:20 RO1 partner ready`,
    ]);
    expect(await states([...start, ...losses, end])).toContain('flapping 10:02:00-10:06:00 240 s 5 losses');
  });

  test('is told apart from what was not observed', async () => {
    const poll = pollText(
      ['10:00:00', '10:30:00'],
      10,
      [
        ['RO1', 'partner-ready', ['10:00:00', 'yes']],
        ['RO1-A', 'role', ['10:00:00', 'active']],
        ['RO1-B', 'role', ['10:00:00', 'standby']],
      ],
      [['10:10:10', '10:19:50']],
    );
    expect(await states({ 'poll.csv': poll })).toEqual(['unobserved 10:10:00-10:20:00 600 s']);
  });
});

describe('a tick of the staff', () => {
  test('tells every loss that counts by its word, on the line of the standby', async () => {
    const story = [...start, '10:10:00 RO1 partner not ready', '10:12:30 RO1 partner ready', end];
    const { ticks } = staffOf(await factsOfPair(story), at('10:00:00'), at('10:30:00'), defaultRules);
    expect(ticks.map((t) => `${clockOf(t.time)} ${t.half} ${t.word}`)).toEqual(['10:10:00 B partner lost']);
  });

  test('tells no loss that a removal brings: its own word says so', async () => {
    const story = [...start, '10:10:00 RO1 B module removed', '10:10:01 RO1 partner not ready', end];
    const { ticks } = staffOf(await factsOfPair(story), at('10:00:00'), at('10:30:00'), defaultRules);
    expect(ticks.map((t) => t.word)).toEqual(['removed']);
  });
});
