import { describe, expect, test } from 'vitest';
import { byCause } from '../../../src/timeline/order.ts';
import { readinessOf, readyAt } from '../../../src/timeline/readiness.ts';
import { spells, stepAt, track } from '../../../src/timeline/tracks.ts';
import { at } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair } from '../../support/pair-facts.ts';

const end = '10:30:00 RO1 A light off';

describe('whether the partner was ready at an instant', () => {
  const ready = async (lines: readonly string[], clock: string): Promise<boolean | null> =>
    readyAt(readinessOf((await factsOfPair(lines)).timeline), at(clock));
  const lines = [
    '10:00:00 RO1 A role active',
    '10:10:00 RO1 partner ready',
    '10:20:00 RO1 partner not ready',
    end,
  ];

  test('is what was last said, its own stamp included', async () => {
    expect(await ready(lines, '10:10:00')).toBe(true);
    expect(await ready(lines, '10:19:59.999')).toBe(true);
    expect(await ready(lines, '10:20:00')).toBe(false);
    expect(await ready(lines, '10:25:00')).toBe(false);
  });

  test('is not known before it was first said, unless that was a loss: then it had been ready', async () => {
    expect(await ready(lines, '10:09:59')).toBeNull();
    expect(
      await ready(['10:00:00 RO1 A role active', '10:20:00 RO1 partner not ready', end], '10:10:00'),
    ).toBe(true);
    expect(await ready([end], '10:10:00')).toBeNull();
  });

  test('is read of readiness where that is logged at all, not of presence', async () => {
    const both = ['10:00:00 RO1 partner absent', ...lines];
    expect(await ready(both, '10:10:00')).toBe(true);
    expect(await ready(['10:00:00 RO1 partner absent', end], '10:10:00')).toBe(false);
  });
});

describe('steps of a state', () => {
  test('hold from their stamp on', async () => {
    const { timeline } = await factsOfPair([
      '10:05:00 RO1 B light flashing',
      '10:10:00 RO1 B light steady',
      end,
    ]);
    const lights = track(timeline, 'B', 'light');
    const held = (clock: string, how?: 'before'): string | null | undefined =>
      stepAt(lights, at(clock), how)?.value;
    expect([held('10:04:59'), held('10:05:00'), held('10:10:00'), held('10:11:00')]).toEqual([
      undefined,
      'flashing',
      'steady',
      'steady',
    ]);
    expect([held('10:05:00', 'before'), held('10:10:00', 'before')]).toEqual([undefined, 'flashing']);
    expect(spells(lights, 'flashing').map((s) => [clockOf(s.start.time), clockOf(s.end?.time ?? 0)])).toEqual(
      [['10:05:00', '10:10:00']],
    );
    expect(spells(lights, 'steady').map((s) => s.end)).toEqual([null]);
  });
});

describe('the order of events', () => {
  test('within one stamp a cause comes before its effect, then by half and value', async () => {
    const lines = [
      '10:05:00 RO1 partner not ready',
      '10:05:00 RO1 B light off',
      '10:05:00 RO1 A light off',
      '10:05:00 RO1 B role none',
      '10:05:00 RO1 B module removed',
      '10:04:00 RO1 B link a up',
    ];
    const { timeline } = await factsOfPair(lines);
    const said = timeline.events
      .filter((e) => e.half !== 'A' || e.signal !== 'role')
      .map((e) => `${e.half ?? 'pair'} ${e.signal}`);
    expect(said).toEqual(['B link-a', 'B removed', 'B role', 'pair partner-ready', 'A light', 'B light']);
    expect([...timeline.events].reverse().sort(byCause)).toEqual(timeline.events);
  });

  test('keeps the steps of one state in the order in which they came', async () => {
    const lines = ['10:05:00 RO1 B link a up', '10:05:00 RO1 B link a down', '10:05:00 RO1 B link a up', end];
    const { timeline } = await factsOfPair(lines);
    expect(track(timeline, 'B', 'link-a').map((e) => e.value)).toEqual(['up', 'down', 'up']);
  });
});
