import { type HalfName, type Story, stateAt } from '../../../samples/story.ts';
import { longestWithin, spellsOf } from '../stories/history.ts';
import { otherThan } from '../stories/plan.ts';
import { swapFacts } from '../stories/swap-facts.ts';
import { upTo } from './true-waits.ts';

/** How exactly the logs tell: the newest stamp, how long before it a state may be out of date, and what a look can hide, in ms. */
export interface Told {
  readonly at: number;
  readonly lagMs: number;
  readonly hiddenMs: number;
  /** A fault is told where there is one. */
  readonly tellsFaults: boolean;
}

/**
 * Whether a condition that is said to be met may be so: at some instant that the newest lines may tell of it truly holds; a time
 * that must have passed had passed by then, but for breaks that no look could show. Of a condition that has no rule here: `null`.
 */
export function mayBeMet(
  story: Story,
  id: string,
  half: string | null,
  holdPoint: string,
  told: Told,
): boolean | null {
  const { at, lagMs, hiddenMs } = told;
  const instants = [at - lagMs, ...timesBetween(story, at - lagMs, at), at];
  const named = half === 'A' || half === 'B' ? half : null;
  if (id === 'ready') {
    const seconds = holdPoint === 'removal' ? 900 : 60;
    const longest = longestWithin(
      spellsOf(story, null, 'partner-ready'),
      'no',
      at - seconds * 1000 + lagMs,
      at - lagMs,
    );
    return longest * 1000 <= hiddenMs;
  }
  const rule = id === 'fault' && !told.tellsFaults ? suppliesGood : rules[id];
  return rule === undefined ? null : instants.some((time) => rule(story, named, time));
}

function timesBetween({ events }: Story, from: number, to: number): readonly number[] {
  return events.filter((e) => e.time > from && e.time <= to).map((e) => e.time);
}

type Rule = (story: Story, half: HalfName | null, time: number) => boolean;

const halves = ['A', 'B'] as const;
const both = (story: Story, time: number, holds: (half: HalfName) => boolean): boolean =>
  time >= story.from && halves.every(holds);

const suppliesGood: Rule = (story, _half, time) => {
  const now = stateAt(story, time);
  return both(story, time, (h) => now[h].supply === 'good');
};

const rules: Readonly<Record<string, Rule>> = {
  roles(story, half, time) {
    const now = stateAt(story, time);
    return half !== null && now[half].role === 'standby' && now[otherThan(half)].role === 'active';
  },
  steady: (story, half, time) => half !== null && stateAt(story, time)[half].light === 'steady',
  links(story, _half, time) {
    const now = stateAt(story, time);
    return both(
      story,
      time,
      (h) => now[h]['link-a'] === 'up' && now[h]['link-b'] === 'up' && now[h].links === 'straight',
    );
  },
  configuration: (story, _half, time) => stateAt(story, time).pair.configuration === 'current',
  fault(story, _half, time) {
    const { bringUps } = swapFacts(upTo(story, time));
    const isOpen = story.events.some(
      (e) =>
        e.signal === 'fault' &&
        e.time <= time &&
        !bringUps.some((b) => b.half === e.half && (b.settled ?? 0) >= e.time),
    );
    return !isOpen && suppliesGood(story, _half, time);
  },
  identity(story, _half, time) {
    const now = stateAt(story, time);
    return both(story, time, (h) => now[h].model !== '' && now[h].firmware !== '');
  },
  reflash(story, _half, time) {
    const { A, B } = stateAt(story, time);
    return A.firmware !== '' && A.firmware === B.firmware;
  },
  in(story, half, time) {
    const moves = story.events.filter(
      (e) => e.half === half && e.time <= time && (e.signal === 'removed' || e.signal === 'inserted'),
    );
    return moves.at(-1)?.signal !== 'removed';
  },
  identified: (story, half, time) => half !== null && stateAt(story, time)[half].serial !== '',
  'first-settled'(story, half, time) {
    const { bringUps } = swapFacts(upTo(story, time));
    return bringUps.findLast((b) => b.half === half)?.settled != null;
  },
};
