import type { HalfName, Story } from '../../../samples/story.ts';
import { type Spell, spellsOf, valueAt } from './history.ts';

/** A module that came out, and the one that came into its place; milliseconds UTC. */
export interface Replacement {
  readonly half: HalfName;
  readonly removed: number;
  readonly inserted: number;
}

/** A bring-up as it was. Instants are milliseconds UTC, `null` where there was none. */
export interface TrueBringUp {
  readonly half: HalfName;
  readonly cause: 'inserted' | 'reflash';
  readonly start: number;
  /** The half was removed, reflashed or became active; the story's end where nothing ended it. */
  readonly end: number;
  readonly ready: number | null;
  /** The ready that held. */
  readonly settled: number | null;
  /** The steady light that held. */
  readonly steady: number | null;
}

/** An exchange of the roles: when the old half left the active role, and when the other took it. */
export interface TrueSwitchover {
  readonly at: number;
  readonly taken: number;
  readonly fromHalf: HalfName;
}

/** What happened in a swap, read off its story without any of the program's code. */
export interface SwapFacts {
  readonly story: Story;
  /** In the order of the removals. */
  readonly replacements: readonly Replacement[];
  /** In the order of their starts. */
  readonly bringUps: readonly TrueBringUp[];
  /** From the first removal to the end. */
  readonly switchovers: readonly TrueSwitchover[];
  readonly firstRemoval: number;
  /** The ready of the last bring-up, if it held. */
  readonly settled: number | null;
  /** The end of the swap: half an hour after it settled, or the end of the story. */
  readonly to: number;
}

const holdMs = 60_000;
const soakMs = 1_800_000;
const halves = ['A', 'B'] as const;

/** The facts of a swap story. Source of the rules: design.md, sections 1, 4 and 5. */
export function swapFacts(story: Story): SwapFacts {
  const replacements = halves
    .flatMap((half) => replacementsOf(story, half))
    .sort((a, b) => a.removed - b.removed);
  const firstRemoval = replacements[0]?.removed ?? story.to;
  const bringUps = halves.flatMap((half) => bringUpsOf(story, half)).sort((a, b) => a.start - b.start);
  const settled = bringUps.at(-1)?.settled ?? null;
  const to = settled === null ? story.to : Math.min(story.to, settled + soakMs);
  const switchovers = switchoversOf(story).filter(({ at }) => at >= firstRemoval && at <= to);
  return { story, replacements, bringUps, switchovers, firstRemoval, settled, to };
}

function replacementsOf({ events }: Story, half: HalfName): readonly Replacement[] {
  const moves = events.filter((e) => e.half === half && (e.signal === 'removed' || e.signal === 'inserted'));
  return moves.flatMap(({ signal, time }, index) => {
    const next = moves[index + 1];
    return signal === 'removed' && next !== undefined ? [{ half, removed: time, inserted: next.time }] : [];
  });
}

function bringUpsOf(story: Story, half: HalfName): readonly TrueBringUp[] {
  const own = story.events.filter((e) => e.half === half);
  const ready = spellsOf(story, null, 'partner-ready');
  const light = spellsOf(story, half, 'light');
  const role = spellsOf(story, half, 'role');
  return own.flatMap((event) => {
    const cause =
      event.signal === 'inserted' ? 'inserted' : event.signal === 'reflash-end' ? 'reflash' : null;
    if (cause === null) return [];
    const start = event.time;
    const ends = own.filter(
      ({ time, signal, value }) => time > start && (ending.has(signal) || value === 'active'),
    );
    const end = ends[0]?.time ?? story.to;
    const during = (spells: readonly Spell[], value: string): readonly Spell[] =>
      spells.filter((s) => s.value === value && s.from > start && s.from <= end);
    const readies = during(ready, 'yes');
    const steadies = during(light, 'steady');
    // The light goes off as the half becomes active: that ends a steady light as held.
    const held = (s: Spell): boolean => s.to - s.from >= holdMs;
    const isSteady = (s: Spell): boolean => held(s) || valueAt(role, s.to) === 'active';
    return [
      {
        half,
        cause,
        start,
        end,
        ready: readies[0]?.from ?? null,
        settled: readies.find(held)?.from ?? null,
        steady: steadies.find(isSteady)?.from ?? null,
      },
    ];
  });
}

const ending: ReadonlySet<string> = new Set(['removed', 'reflash-start']);

/** Every exchange of the roles of a story in the order of time. */
function switchoversOf(story: Story): readonly TrueSwitchover[] {
  return halves.flatMap((fromHalf) => {
    const other = spellsOf(story, fromHalf === 'A' ? 'B' : 'A', 'role').filter((s) => s.value === 'active');
    const own = spellsOf(story, fromHalf, 'role').filter((s) => s.value === 'active' && s.to < story.to);
    return own.flatMap(({ from, to: at }) => {
      const next = other.find((s) => s.from > from && s.to > at);
      return next === undefined ? [] : [{ at, taken: next.from, fromHalf }];
    });
  });
}
