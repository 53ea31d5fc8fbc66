import type { HalfName } from '../../../samples/story.ts';
import type { CheckId } from './check-ids.ts';
import { longestWithin, overlap, type Spell, spellsOf, valueAt, valueBefore } from './history.ts';
import type { SwapFacts, TrueBringUp, TrueSwitchover } from './swap-facts.ts';

/** Whether a check truly holds. */
export interface Verity {
  /** `null`: the rules do not decide it, as where a bring-up was cut short by other work. */
  readonly holds: boolean | null;
  /** How long the state lasted that breaks it; `null` where it stays, or where it holds. */
  readonly brokenSeconds: number | null;
}

const halves = ['A', 'B'] as const;
const minute = 60_000;

/** The truth of all checks. Source of the rules: design.md, section 5; none shares code with the program. */
export function checksOf(facts: SwapFacts): Readonly<Record<CheckId, Verity>> {
  const atEnd = (half: HalfName, signal: string): string =>
    valueAt(spellsOf(facts.story, half, signal), facts.to);
  const alike = (signal: string): boolean =>
    atEnd('A', signal) === atEnd('B', signal) && atEnd('A', signal) !== '';
  const linked = (half: HalfName): boolean =>
    atEnd(half, 'link-a') === 'up' && atEnd(half, 'link-b') === 'up' && atEnd(half, 'links') === 'straight';
  return {
    'baseline-redundant': without(
      facts,
      null,
      'partner-ready',
      'no',
      facts.firstRemoval - 15 * minute,
      facts.firstRemoval,
    ),
    'removed-standby': plainly(
      facts.replacements.every(
        (r) => valueBefore(spellsOf(facts.story, r.half, 'role'), r.removed) === 'standby',
      ),
    ),
    'one-half-at-a-time': plainly(oneAtATime(facts)),
    'identified-standby': plainly(facts.replacements.every((r) => becameStandby(facts, r.half, r.inserted))),
    'firmware-matched': plainly(
      alike('firmware') && facts.switchovers.every((s) => firmwareAlike(facts, s.at)),
    ),
    synchronised: ofLastBringUps(facts, synchronised),
    'light-steady': ofLastBringUps(facts, lightSteady),
    'ready-before-switchover': worst(facts.switchovers.map((s) => readyBefore(facts, s))),
    'switchover-commanded': plainly(facts.switchovers.every((s) => isCommanded(facts, s))),
    'never-without-active': oneActive(facts),
    'links-restored': plainly(halves.every(linked)),
    'models-matched': plainly(alike('model')),
    'configuration-current': plainly(
      valueAt(spellsOf(facts.story, null, 'configuration'), facts.to) === 'current',
    ),
    'not-flapping': flapping(facts),
    'nothing-at-fault': plainly(nothingAtFault(facts)),
    soaked: soaked(facts),
  };
}

function plainly(holds: boolean | null): Verity {
  return { holds, brokenSeconds: null };
}

function worst(parts: readonly Verity[]): Verity {
  return (
    parts.find((p) => p.holds === false) ??
    parts.find((p) => p.holds === null) ?? { holds: true, brokenSeconds: null }
  );
}

/** A value never stood in a window. */
function without(
  { story }: SwapFacts,
  half: HalfName | null,
  signal: string,
  value: string,
  from: number,
  to: number,
): Verity {
  const seconds = longestWithin(spellsOf(story, half, signal), value, from, to);
  return { holds: seconds === 0, brokenSeconds: seconds === 0 ? null : seconds };
}

/** No half was out while another was, and each had settled before another was removed. */
function oneAtATime({ replacements, bringUps }: SwapFacts): boolean {
  return replacements.every((second, index) =>
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
}

function becameStandby({ story }: SwapFacts, half: HalfName, inserted: number): boolean {
  return spellsOf(story, half, 'role').some(
    (s) => s.value === 'standby' && s.from >= inserted && s.from <= inserted + 15 * minute,
  );
}

function firmwareAlike({ story }: SwapFacts, time: number): boolean {
  const [a, b] = halves.map((half) => valueBefore(spellsOf(story, half, 'firmware'), time));
  return a === b && a !== '';
}

function ofLastBringUps(
  { replacements, bringUps, story }: SwapFacts,
  judge: (b: TrueBringUp, end: number) => boolean | null,
): Verity {
  const lasts = [...new Set(replacements.map((r) => r.half))].map((half) =>
    bringUps.findLast((b) => b.half === half),
  );
  return worst(lasts.map((last) => plainly(last === undefined ? null : judge(last, story.to))));
}

function synchronised({ start, settled, end }: TrueBringUp): boolean | null {
  if (settled !== null) return settled - start <= 15 * minute;
  return end - start < 15 * minute ? null : false;
}

function lightSteady({ start, steady, end }: TrueBringUp): boolean | null {
  if (steady !== null) return steady - start <= 300_000;
  return end - start <= 300_000 ? null : false;
}

/** Ready, and for a minute at least. A short ready breaks it by the time without one before. */
function readyBefore({ story }: SwapFacts, { at }: TrueSwitchover): Verity {
  const ready = spellsOf(story, null, 'partner-ready');
  const index = ready.findLastIndex((s) => s.from < at);
  const last = ready[index];
  if (last === undefined) return plainly(null);
  if (last.value === 'no') return { holds: false, brokenSeconds: (at - last.from) / 1000 };
  const before = ready[index - 1];
  if (before === undefined || at - last.from >= minute) return plainly(true);
  return { holds: false, brokenSeconds: (before.to - before.from) / 1000 };
}

function isCommanded({ story }: SwapFacts, { at }: TrueSwitchover): boolean {
  return story.events.some((e) => e.signal === 'switchover-command' && e.time <= at && e.time >= at - 30_000);
}

/** Never neither half active, nor both, for longer than a second. */
function oneActive({ story, firstRemoval, to }: SwapFacts): Verity {
  const spells = halves.map((half) => spellsOf(story, half, 'role'));
  const times = [...new Set(spells.flat().map((s) => s.from))].sort((a, b) => a - b);
  const conflicts: Spell[] = times.map((from, index) => {
    const active = spells.filter((s) => valueAt(s, from) === 'active').length;
    return { value: String(active), from, to: times[index + 1] ?? story.to };
  });
  const longest = Math.max(
    longestTogether(conflicts, '0', firstRemoval, to),
    longestTogether(conflicts, '2', firstRemoval, to),
  );
  return { holds: longest <= 1, brokenSeconds: longest <= 1 ? null : longest };
}

/** As the longest part, but neighbours with one value are one spell. */
function longestTogether(spells: readonly Spell[], value: string, from: number, to: number): number {
  let longest = 0;
  let running = 0;
  for (const spell of spells) {
    running = spell.value === value ? running + overlap(spell, from, to) : 0;
    longest = Math.max(longest, running);
  }
  return longest / 1000;
}

/**
 * Losses that no work explains: each adds 1 to a figure that halves in 900 s; above 2 the standby flaps. The shortest
 * loss must be seen for all of them to be.
 */
function flapping({ story, replacements, to }: SwapFacts): Verity {
  const firstInsertion = Math.min(...replacements.map((r) => r.inserted));
  let [figure, last, isWork, holds] = [0, story.from, false, true];
  let shortest = Number.POSITIVE_INFINITY;
  for (const [index, { time, signal, value }] of story.events.entries()) {
    if (signal === 'removed' || signal === 'reflash-start') isWork = true;
    if (signal !== 'partner-ready') continue;
    if (value === 'no' && !isWork) {
      figure = figure * 2 ** (-(time - last) / 900_000) + 1;
      last = time;
      const back = story.events.slice(index + 1).find((e) => e.signal === 'partner-ready');
      shortest = Math.min(shortest, ((back?.time ?? story.to) - time) / 1000);
      if (figure > 2 && time >= firstInsertion && time <= to) holds = false;
    }
    if (value === 'yes') isWork = false;
  }
  return { holds, brokenSeconds: holds ? null : shortest };
}

/** A light that was never steady since the last bring-up belongs to another check. */
function nothingAtFault({ story, replacements, settled, to }: SwapFacts): boolean {
  const supplies = halves.every((half) => valueAt(spellsOf(story, half, 'supply'), to) === 'good');
  const lights = halves.every((half) => {
    const light = spellsOf(story, half, 'light');
    const isStandby = valueAt(spellsOf(story, half, 'role'), to) === 'standby';
    const now = light.findLastIndex((s) => s.from <= to);
    return !(isStandby && light[now]?.value === 'flashing' && light[now - 1]?.value === 'steady');
  });
  const faults = story.events.some(
    ({ signal, half, time }) =>
      signal === 'fault' &&
      time <= to &&
      replacements.some(
        (r) => r.half === half && time >= r.inserted && !(settled !== null && settled > time),
      ),
  );
  return supplies && lights && !faults;
}

/** A ready partner without a break for half an hour from the one that settled. */
function soaked({ story, settled }: SwapFacts): Verity {
  if (settled === null || settled + 30 * minute > story.to) return plainly(null);
  const seconds = longestWithin(spellsOf(story, null, 'partner-ready'), 'no', settled, settled + 30 * minute);
  return { holds: seconds === 0, brokenSeconds: seconds === 0 ? null : seconds };
}
