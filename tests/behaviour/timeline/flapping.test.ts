import { describe, expect, test } from 'vitest';
import { flappingSpells } from '../../../src/timeline/flapping.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { factsOfPair } from '../../support/pair-facts.ts';

const begin = Date.UTC(2026, 2, 14, 10);

/** The spells of losses so many seconds after ten o'clock: from, to, how many, in seconds; the log ends after `end`. */
async function spells(seconds: readonly number[], end = 36_000): Promise<readonly (readonly number[])[]> {
  const clock = (s: number): string => new Date(begin + s * 1000).toISOString().slice(11, 23);
  const lines = seconds.flatMap((s) => [
    `${clock(s)} RO1 partner not ready`,
    `${clock(s + 1)} RO1 partner ready`,
  ]);
  const { losses } = await factsOfPair(lines);
  const found = flappingSpells(
    losses.map((l) => l.event),
    begin + end * 1000,
    defaultRules.flapping,
  );
  return found.map((s) => [(s.from - begin) / 1000, Math.round((s.to - begin) / 1000), s.events.length]);
}

describe('flapping', () => {
  test('starts with the loss that lifts the penalty over 2 and ends where it is down to 0.75', async () => {
    // Half-life 900 s. After 180 s a penalty is 2^-0.2 = 0.8706 of itself: 1, 1.8706, 2.6285 at the third loss.
    // From 2.6285 down to 0.75 takes 900 s * log2(3.5047) = 1628 s.
    expect(await spells([0, 180, 360])).toEqual([[360, 1988, 3]]);
  });

  test('is none below the cut-off: two losses, or three far apart', async () => {
    expect(await spells([0, 2])).toEqual([]);
    // After 900 s half is left: 1, 1.5, 1.75.
    expect(await spells([0, 900, 1800])).toEqual([]);
  });

  test('ends at the latest with the log', async () => {
    expect(await spells([0, 180, 360], 1000)).toEqual([[360, 1000, 3]]);
  });

  test('goes on while losses come before the penalty is down, and is another spell after that', async () => {
    // 1600 s after the third loss 2.6285 is down to 0.7667, above 0.75: the fourth belongs to the same spell.
    // Its penalty of 1.7667 is down to 0.75 after 900 s * log2(2.3556) = 1112 s.
    expect(await spells([0, 180, 360, 1960])).toEqual([[360, 3072, 4]]);
    // 1640 s after it is 0.7433: that spell is over. What is left still weighs: 1.7433, 2.5177, 3.1918 at the next three; from
    // there down to 0.75 takes 900 s * log2(4.2557) = 1880 s.
    expect(await spells([0, 180, 360, 2000, 2180, 2360])).toEqual([
      [360, 1988, 3],
      [2180, 4240, 3],
    ]);
  });

  test('counts only the losses that still weighed in', async () => {
    // An hour later 1/16 of the first is left: 1.0625, 1.9250, 2.6758, which takes 900 s * log2(3.5677) = 1651 s.
    expect(await spells([0, 3600, 3780, 3960])).toEqual([[3960, 5611, 3]]);
  });

  test('has a peak: the highest penalty of the spell', async () => {
    const { losses, timeline } = await factsOfPair(
      ['10:00:00', '10:03:00', '10:06:00', '10:30:00'].flatMap((c) => [
        `${c} RO1 partner not ready`,
        `${c}.5 RO1 partner ready`,
      ]),
    );
    const [spell] = flappingSpells(
      losses.map((l) => l.event),
      timeline.to,
      defaultRules.flapping,
    );
    expect(spell?.peak).toBeCloseTo(2.6285, 3);
  });
});
