import { overlap, type Spell, spellsOf, valueAt, valueBefore } from './history.ts';
import type { SwapFacts, TrueBringUp, TrueSwitchover } from './swap-facts.ts';
import { holdingIf, undecided, type Verity, worstOf } from './verity.ts';

const halves = ['A', 'B'] as const;
const minute = 60_000;

export function removedStandby({ story, replacements }: SwapFacts): Verity {
  const holds = replacements.every(
    (r) => valueBefore(spellsOf(story, r.half, 'role'), r.removed) === 'standby',
  );
  return holdingIf(holds, ['role']);
}

/** No half was out while another was, and each had settled before another was removed. */
export function oneHalfAtATime({ replacements, bringUps }: SwapFacts): Verity {
  const holds = replacements.every((second, index) =>
    replacements.slice(0, index).every((first) => {
      if (first.half === second.half) return true;
      const settled = bringUps.some(
        (b) =>
          b.half === first.half &&
          b.start >= first.inserted &&
          b.settled !== null &&
          b.settled <= second.removed,
      );
      return first.inserted <= second.removed && settled;
    }),
  );
  return holdingIf(holds, ['partner-ready', 'role', 'serial', 'removed']);
}

/** Each new module took the standby role within a quarter of an hour; before that is over, it still may. */
export function identifiedStandby({ story, replacements }: SwapFacts): Verity {
  return worstOf(
    replacements.map(({ half, inserted }) => {
      const until = inserted + 15 * minute;
      const isTaken = spellsOf(story, half, 'role').some(
        (s) => s.value === 'standby' && s.from >= inserted && s.from <= until,
      );
      return !isTaken && story.to < until ? undecided : holdingIf(isTaken, ['role']);
    }),
  );
}

/** Alike before each switchover, and at the end. */
export function firmwareMatched({ story, switchovers, to }: SwapFacts): Verity {
  const spells = halves.map((half) => spellsOf(story, half, 'firmware'));
  const alike = ([a, b]: readonly string[]): boolean => a === b && a !== '';
  const holds =
    alike(spells.map((s) => valueAt(s, to))) &&
    switchovers.every(({ at }) => alike(spells.map((s) => valueBefore(s, at))));
  return holdingIf(holds, ['firmware']);
}

/** The last bring-up of each new module became ready within 15 min and held. */
export function synchronised(facts: SwapFacts): Verity {
  return ofLastBringUps(facts, 'partner-ready', (b) => b.settled, 15 * minute);
}

/** And its light was steady within 300 s. */
export function lightSteady(facts: SwapFacts): Verity {
  return ofLastBringUps(facts, 'light', (b) => b.steady, 300_000);
}

/** What other work cut short before the limit was over is not decided. */
function ofLastBringUps(
  { replacements, bringUps }: SwapFacts,
  signal: string,
  reached: (bringUp: TrueBringUp) => number | null,
  limitMs: number,
): Verity {
  const replaced = new Set(replacements.map((r) => r.half));
  const lasts = [...replaced].map((half) => bringUps.findLast((b) => b.half === half));
  return worstOf(
    lasts.map((last) => {
      const time = last === undefined ? null : reached(last);
      if (last === undefined || (time === null && last.end - last.start <= limitMs)) return undecided;
      return holdingIf(time !== null && time - last.start <= limitMs, [signal]);
    }),
  );
}

/** A command came in the half minute before each switchover. */
export function switchoverCommanded({ story, switchovers }: SwapFacts): Verity {
  const isCommanded = ({ at }: TrueSwitchover): boolean =>
    story.events.some((e) => e.signal === 'switchover-command' && e.time <= at && e.time >= at - 30_000);
  return holdingIf(switchovers.every(isCommanded), ['role', 'switchover']);
}

/** Never neither half active, nor both, for longer than a second. */
export function neverWithoutActive({ story, firstRemoval, to }: SwapFacts): Verity {
  const spells = halves.map((half) => spellsOf(story, half, 'role'));
  const times = [...new Set(spells.flat().map((s) => s.from))].sort((a, b) => a - b);
  const counts: readonly Spell[] = times.map((from, index) => {
    const active = spells.filter((s) => valueAt(s, from) === 'active').length;
    return { value: String(active), from, to: times[index + 1] ?? story.to };
  });
  const longest = Math.max(...['0', '2'].map((count) => longestTogether(counts, count, firstRemoval, to)));
  return holdingIf(longest <= 1, ['role'], longest);
}

/** Seconds of the longest stretch of one value within a window, neighbours taken together. */
function longestTogether(spells: readonly Spell[], value: string, from: number, to: number): number {
  let [longest, running] = [0, 0];
  for (const spell of spells) {
    running = spell.value === value ? running + overlap(spell, from, to) : 0;
    longest = Math.max(longest, running);
  }
  return longest / 1000;
}
