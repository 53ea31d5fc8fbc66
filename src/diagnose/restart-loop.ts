import { between } from '../timeline/durations.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import { track } from '../timeline/tracks.ts';
import {
  type Duration,
  type NonEmpty,
  type Point,
  sayAbout,
  sayDuration,
  type TimelineEvent,
} from '../vocabulary.ts';
import { begins, unexplained } from './begins.ts';
import { type Cause, capped, doubted, type Trouble, type Weighing } from './cause.ts';
import { fixedTimeOf, saySpread } from './fixed-time.ts';

/**
 * Least evidence with which a good engineer would name it: four restarts of the standby, each within 30 min of the one before and not
 * brought by a failed sync, a supply fault or a module that was pulled, whether at a regular distance or not: a person tries twice
 * or thrice. What ends the attempts decides: where syncs fail and restarts follow, the failing is the trouble, not the restarts; so
 * it is where they fail after a fixed time and the restart comes within 5 s of it. Common practice, no source.
 */
export const restartLoop: Cause = {
  meta: {
    id: 'restart-loop',
    title: 'The standby restarts again and again',
    kind: 'pattern',
    explains: 'A half that starts, meets the same fault each time and restarts.',
    shows:
      'Restarts of one half that follow each other with no failed sync between them, or at a regular distance.',
    needs: [['restart']],
    next: 'Stop the loop as the maker says before anything is copied again, and read the fault that the half shows just before it restarts; call for support with both. Restarts by hand look the same in a log: ask whether there were any.',
  },
  weigh(trouble) {
    const restarts = restartsOf(trouble);
    const [first, second, ...rest] = restarts;
    if (first === undefined) return doubted([noRestart(trouble)]);
    const times = restarts.length === 1 ? 'once' : `${restarts.length} times`;
    if (second === undefined || restarts.length <= trouble.limits.patternCount) {
      const statement = `Half ${first.half ?? ''} restarted ${times}: too few for a loop.`;
      return doubted([{ statement, evidence: linesOfAll([first, ...restarts.slice(1)]) }]);
    }
    return weighRestarts(trouble, [first, second, ...rest], times);
  },
};

/** One restart to the next: how far apart, and whether the restart itself ended what the one before began. */
interface Turn {
  readonly spacing: Duration;
  readonly isByItself: boolean;
}

function weighRestarts(trouble: Trouble, restarts: NonEmpty<TimelineEvent>, times: string): Weighing {
  const { limits } = trouble;
  const turns = turnsOf(trouble, restarts);
  const found = fixedTimeOf(
    turns.map((t) => t.spacing),
    limits,
  );
  const row = longestRow(turns);
  const byThemselves = turns.filter((t) => t.isByItself).length;
  const [{ half }] = restarts;
  const evidence = linesOfAll(restarts);
  const rhythm =
    found === null ? '' : `, with a median of ${sayAbout(found.median)} between two${saySpread(found)}`;
  const counted: Point = { statement: `Half ${half ?? ''} restarted ${times}${rhythm}.`, evidence };
  const followed: Point = {
    statement: `${byThemselves} of the ${turns.length} restarts after the first came within ${sayDuration(limits.episodeMs / 1000)} of the one before and were not brought by a failed sync.`,
    evidence,
  };
  const isRow = row >= limits.patternCount;
  const isFixed = found?.verdict === 'fixed' && byThemselves * 2 >= turns.length;
  if (!isRow && !isFixed) return doubted([counted, followed]);
  const byRow = isRow ? limits.loopDecibans + row - limits.patternCount : 0;
  const byRhythm = isFixed ? (found?.decibans ?? 0) : 0;
  return { decibans: capped(Math.max(byRow, byRhythm), limits), for: [counted, followed], against: [] };
}

function turnsOf(trouble: Trouble, restarts: readonly TimelineEvent[]): readonly Turn[] {
  const { facts, limits, rules, episode } = trouble;
  const [first] = restarts;
  const failures = track(facts.timeline, first?.half ?? null, 'sync-failed');
  const aborts = fixedTimeOf(
    episode.failed.flatMap((a) => a.abort ?? []),
    limits,
  );
  // Where syncs fail after a fixed time that is the trouble, however soon a restart follows.
  const belongsMs = aborts?.verdict === 'fixed' ? 0 : rules.belongsMs;
  return restarts.slice(1).map((restart, index) => {
    const before = restarts[index] ?? restart;
    const isFailed = failures.some(
      (e) => e.time > before.time + rules.belongsMs && e.time <= restart.time - belongsMs,
    );
    const spacing = between(before, restart);
    return { spacing, isByItself: !isFailed && spacing.low * 1000 <= limits.episodeMs };
  });
}

function longestRow(turns: readonly Turn[]): number {
  let longest = 0;
  let row = 0;
  for (const { isByItself } of turns) {
    row = isByItself ? row + 1 : 0;
    longest = Math.max(longest, row);
  }
  return longest;
}

function noRestart({ half, evidence }: Trouble): Point {
  return {
    statement: `No restart${half === null ? '' : ` of half ${half}`} was logged in this time.`,
    evidence,
  };
}

/** Restarts of the half in trouble that no supply fault, removal or insertion brought. */
function restartsOf({ facts: { timeline }, half, episode, rules }: Trouble): readonly TimelineEvent[] {
  const restarts = timeline.events.filter(
    (e) =>
      e.signal === 'restart' &&
      e.time >= episode.from - rules.belongsMs &&
      (half === null || e.half === half),
  );
  return unexplained(restarts, timeline, begins(timeline, ['supply'], 'fault'), rules);
}
