import { describe, expect, test } from 'vitest';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { staffOf } from '../../../src/timeline/staff.ts';
import type { Staff } from '../../../src/vocabulary.ts';
import { at, pollText } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair, type Told, whenOf } from '../../support/pair-facts.ts';

const swap = [
  '10:00:00 RO1 A role active',
  '10:00:00 RO1 B role standby',
  '10:00:00 RO1 partner ready',
  '10:00:00 RO1 B light steady',
  '10:10:00 RO1 B module removed',
  '10:10:00 RO1 partner not ready',
  '10:10:00 RO1 B light off',
  '10:12:00 RO1 B module inserted',
  '10:12:00 RO1 B role standby',
  '10:12:00 RO1 B light flashing',
  '10:12:00 RO1 B fault',
  '10:14:00 RO1 partner ready',
  '10:16:00 RO1 B light steady',
  '10:20:00 RO1 A role standby',
  '10:20:00 RO1 B role active',
  '10:30:00 RO1 A light off',
];

async function staff(story: Told, from = '10:00:00', to = '10:30:00'): Promise<Staff> {
  return staffOf(await factsOfPair(story), at(from), at(to), defaultRules);
}
const span = ({ from, to }: { readonly from: number; readonly to: number }): string =>
  `${clockOf(from)}-${clockOf(to)}`;
const drawn = ({ stretches }: Staff, half: string): readonly string[] =>
  stretches.filter((s) => s.half === half).map((s) => `${span(s)} ${s.drawn}`);

describe('the staff of a pair', () => {
  test('draws each half as it was: active, ready, absent, not ready', async () => {
    const found = await staff(swap);
    expect(drawn(found, 'A')).toEqual(['10:00:00-10:20:00 active', '10:20:00-10:30:00 ready']);
    expect(drawn(found, 'B')).toEqual([
      '10:00:00-10:10:00 ready',
      '10:10:00-10:12:00 absent',
      '10:12:00-10:14:00 not-ready',
      '10:14:00-10:20:00 ready',
      '10:20:00-10:30:00 active',
    ]);
    expect([found.halves, found.limitSeconds]).toEqual([['A', 'B'], 300]);
  });

  test('cut to a window shows what was so at its edges', async () => {
    const found = await staff(swap, '10:10:00', '10:14:00');
    expect(drawn(found, 'B')).toEqual(['10:10:00-10:12:00 absent', '10:12:00-10:14:00 not-ready']);
    expect(found.ticks.map((t) => `${whenOf(t)} ${t.half} ${t.word}`)).toEqual([
      '10:10:00 B removed',
      '10:12:00 B fault',
      '10:12:00 B inserted',
    ]);
    expect(found.lights.map((l) => `${l.half} ${span(l)} ${l.light}`)).toEqual([
      'B 10:12:00-10:14:00 flashing',
    ]);
    expect((await staff(swap, '10:10:01', '10:11:59')).ticks).toEqual([]);
    expect((await staff(swap, '10:10:01', '10:12:00')).ticks.map((t) => t.word)).toEqual([
      'fault',
      'inserted',
    ]);
  });

  test('draws a half as unknown, not as not ready, until a line states its role', async () => {
    const lines = [
      '10:00:00 RO1 A link a up',
      '10:10:00 RO1 partner ready',
      '10:20:00 RO1 B role standby',
      '10:30:00 RO1 A link a down',
    ];
    expect(drawn(await staff(lines), 'B')).toEqual(['10:00:00-10:20:00 unknown', '10:20:00-10:30:00 ready']);
    const late = swap.map((line) => line.replace('10:12:00 RO1 B role', '10:15:00 RO1 B role')).sort();
    expect(drawn(await staff(late), 'B').slice(1, 4)).toEqual([
      '10:10:00-10:12:00 absent',
      '10:12:00-10:15:00 unknown',
      '10:15:00-10:20:00 ready',
    ]);
    expect(drawn(await staff(['10:00:00 RO1 A link a up', '10:30:00 RO1 A link a down']), 'A')).toEqual([
      '10:00:00-10:30:00 unknown',
    ]);
  });

  test('shows lights, what happened, switchovers and bring-ups against their limit', async () => {
    const { lights, ticks, switchovers, bringUps } = await staff(swap);
    expect(lights.map((l) => `${l.half} ${span(l)} ${l.light}`)).toEqual([
      'B 10:00:00-10:10:00 steady',
      'B 10:16:00-10:30:00 steady',
      'B 10:12:00-10:16:00 flashing',
    ]);
    expect(ticks.map((t) => t.word)).toEqual(['removed', 'fault', 'inserted']);
    expect(switchovers.map((s) => `${whenOf(s)} ${s.fromHalf}>${s.toHalf}`)).toEqual(['10:20:00 A>B']);
    expect((await staff(swap, '10:00:00', '10:19:59')).switchovers).toEqual([]);
    // Inserted at 10:12, ready for good at 10:14; the flag stands five minutes after the start.
    expect(bringUps.map((b) => `${b.half} ${span(b)} flag ${clockOf(b.flag)} late ${b.late}`)).toEqual([
      'B 10:12:00-10:14:00 flag 10:17:00 late false',
    ]);
  });

  test('shows a bring-up as late that was not ready when the flag had passed, cut to the window', async () => {
    const late = swap.filter((line) => !line.includes('10:14') && !line.includes('10:20'));
    const said = async (to: string): Promise<readonly string[]> =>
      (await staff(late, '10:00:00', to)).bringUps.map((b) => `${span(b)} late ${b.late}`);
    expect(await said('10:30:00')).toEqual(['10:12:00-10:30:00 late true']);
    expect(await said('10:20:00')).toEqual(['10:12:00-10:20:00 late true']);
    expect(await said('10:11:59')).toEqual([]);
    const ready = async (clock: string): Promise<readonly boolean[]> =>
      (await staff([...late, `${clock} RO1 partner ready`].sort())).bringUps.map((b) => b.late);
    expect(await ready('10:17:00')).toEqual([false]);
    expect(await ready('10:17:00.001')).toEqual([true]);
  });

  test('leaves out a bring-up that a reflash superseded, unless its light was past the limit by then', async () => {
    const reflash = (start: string): readonly string[] => [
      ...swap.filter((line) => line < '10:14'),
      `${start} RO1 B reflash start`,
      '10:22:00 RO1 B reflash end',
      '10:24:00 RO1 partner ready',
      '10:30:00 RO1 A light off',
    ];
    const begins = async (start: string): Promise<readonly string[]> =>
      (await staff(reflash(start))).bringUps.map((b) => clockOf(b.from));
    expect(await begins('10:16:00')).toEqual(['10:22:00']);
    expect(await begins('10:18:00')).toEqual(['10:12:00', '10:22:00']);
  });

  test('claims nothing where nothing was observed', async () => {
    const poll = pollText(
      ['10:00:00', '10:30:00'],
      10,
      [
        ['RO1', 'partner-ready', ['10:00:00', 'yes']],
        ['RO1-A', 'role', ['10:00:00', 'active']],
        ['RO1-B', 'role', ['10:00:00', 'standby']],
        ['RO1-B', 'light', ['10:00:00', 'steady']],
      ],
      [['10:10:10', '10:19:50']],
    );
    const found = await staff({ 'poll.csv': poll });
    expect(drawn(found, 'A')).toEqual(['10:00:00-10:10:00 active', '10:20:00-10:30:00 active']);
    expect(found.lights.map(span)).toEqual(['10:00:00-10:10:00', '10:20:00-10:30:00']);
    expect(found.unobserved.map(span)).toEqual(['10:10:00-10:20:00']);
    expect((await staff({ 'poll.csv': poll }, '10:12:00', '10:15:00')).unobserved.map(span)).toEqual([
      '10:12:00-10:15:00',
    ]);
  });
});
