/** Laws of the generated swap stories: each is what it says it is. */
import { describe, expect, test } from 'vitest';
import { readingsCsv, snapshotsByHalf } from '../../samples/exports.ts';
import { badSwap } from '../../samples/stories/bad-swap.ts';
import { cleanSwap } from '../../samples/stories/clean-swap.ts';
import { plain } from '../../samples/wordings.ts';
import { faults } from '../support/stories/faults.ts';
import { pollText } from '../support/stories/poll-text.ts';
import { swapStory, type ToldSwap } from '../support/stories/swap-story.ts';
import { checkIds, truthOf } from '../support/stories/truth.ts';

const seeds = Array.from({ length: 200 }, (_, index) => index);

function those({ truth }: ToldSwap, holds: boolean | null): readonly string[] {
  return truth.checks.filter((c) => c.holds === holds).map((c) => c.id);
}

describe('a swap story', () => {
  test('is the same for the same seed, and another for another', () => {
    for (const seed of seeds.slice(0, 20)) expect(swapStory(seed)).toEqual(swapStory(seed));
    expect(new Set(seeds.map((seed) => JSON.stringify(swapStory(seed).story))).size).toBe(seeds.length);
  });

  test('without a fault breaks no check and leaves none open', () => {
    for (const seed of seeds) {
      const told = swapStory(seed, null);
      expect([seed, those(told, false), those(told, null)]).toEqual([seed, [], []]);
    }
  });

  test('keeps to realistic times', () => {
    for (const seed of seeds) {
      const { story, truth } = swapStory(seed, null);
      expect(truth.firstRemoval - story.from).toBeGreaterThanOrEqual(15 * 60_000);
      for (const { removed, inserted } of truth.replacements) {
        expect(inserted - removed).toBeGreaterThanOrEqual(40_000);
        expect(inserted - removed).toBeLessThanOrEqual(600_000);
      }
      for (const { half, inserted } of truth.replacements) {
        const report = story.events.find(
          (e) => e.half === half && e.signal === 'serial' && e.time > inserted,
        );
        const started = ((report?.time ?? 0) - inserted) / 1000;
        expect(started).toBeGreaterThanOrEqual(5);
        expect(started).toBeLessThanOrEqual(150);
      }
      expect(story.to - (truth.settled ?? story.to)).toBeGreaterThanOrEqual(30 * 60_000);
    }
  });

  test('tells its events in the order of time', () => {
    for (const fault of faults) {
      const times = swapStory(1, fault).story.events.map((e) => e.time);
      expect([fault.id, times]).toEqual([fault.id, times.toSorted((a, b) => a - b)]);
    }
  });
});

describe.each(faults)('$id', (fault) => {
  test(fault.breaks === null ? 'breaks nothing' : `breaks ${fault.breaks}`, () => {
    for (const seed of seeds) {
      const found = those(swapStory(seed, fault), false);
      if (fault.breaks === null) expect([seed, found]).toEqual([seed, []]);
      else expect([seed, found]).toEqual([seed, expect.arrayContaining([fault.breaks])]);
    }
  });
});

describe('the truth of the demo stories', () => {
  const at = (clock: string): number => Date.parse(`2026-03-14T${clock}Z`);

  test('of a clean swap: every check holds, from instants that stand in the story', () => {
    const { replacements, bringUps, switchovers, settled, to, checks } = truthOf(cleanSwap());
    // B comes out at 09:14:05.212 and goes in 94.6 s later; A 182.5 s and two steps of a switchover after 09:41:10.450.
    expect(replacements[0]).toEqual({ half: 'B', removed: at('09:14:05.212'), inserted: at('09:15:39.812') });
    expect(switchovers).toEqual([{ at: at('09:41:11.090'), taken: at('09:41:11.210'), fromHalf: 'A' }]);
    // Inserted 09:15:39.812, reflash from 41.3 s to 194.1 s later; then ready after 142.412 s, steady after 262.306 s.
    expect(bringUps.slice(0, 2).map((b) => [b.cause, b.start, b.ready, b.settled, b.steady])).toEqual([
      ['inserted', at('09:15:39.812'), null, null, null],
      ['reflash', at('09:18:53.912'), at('09:21:16.324'), at('09:21:16.324'), at('09:23:16.218')],
    ]);
    expect(to).toBe((settled ?? 0) + 1_800_000);
    expect(checks.filter((c) => c.holds !== true)).toEqual([]);
  });

  test('of a bad swap: what it was told to show', () => {
    const { checks, settled } = truthOf(badSwap());
    const those = (holds: boolean | null): readonly string[] =>
      checks.filter((c) => c.holds === holds).map((c) => c.id);
    expect(settled).toBeNull();
    // Firmware 6.2.0 to the end, light never steady in the 500.5 s until the switchover, which came onto a half not ready.
    expect(those(false)).toEqual(['firmware-matched', 'light-steady', 'ready-before-switchover']);
    // That switchover ended the bring-up before its 15 min; nothing settled that could soak.
    expect(those(null)).toEqual(['synchronised', 'soaked']);
  });
});

test('every check is broken by some fault', () => {
  expect([...new Set(faults.flatMap((f) => f.breaks ?? []))].sort()).toEqual([...checkIds].sort());
});

test('a poll that repeats its lines is the poll that the samples write', () => {
  const stamps = [
    { form: 'iso', zone: 'UTC', decimals: 3 },
    { form: 'iso-offset', zone: 'UTC', decimals: 0, aheadSeconds: -2.5 },
  ] as const;
  for (const stamp of stamps)
    for (const seed of seeds.slice(0, 10)) {
      const { story } = swapStory(seed);
      const style = {
        spacingSeconds: 20,
        phaseSeconds: 3.5,
        jitterSeconds: 4,
        stamp,
        delimiter: ',',
        wording: plain,
      };
      expect(pollText(story, 'readings', style)).toBe(readingsCsv(story, style));
      expect(pollText(story, 'snapshots', style)).toBe(snapshotsByHalf(story, style));
    }
});
