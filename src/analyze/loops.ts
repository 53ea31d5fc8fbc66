import { between } from '../timeline/durations.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { linesOf, uniqueLines } from '../timeline/readiness.ts';
import { spells } from '../timeline/tracks.ts';
import {
  type BringUp,
  type Finding,
  type NonEmpty,
  type PairTimeline,
  type SourceLine,
  sayDuration,
  type TimelineEvent,
} from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';
import type { Limits } from './limits.ts';

/** Attempts of one half that fail, or restarts, one after another. */
export const loops: Analyzer = {
  meta: {
    id: 'loops',
    question: 'Did a half fail to synchronise, or restart, again and again?',
    needs: ['partner-ready'],
    findings: ['sync-loop', 'restart-loop'],
  },
  analyze(facts, limits) {
    const { halves, events } = facts.timeline;
    const looked = events.filter((e) => e.signal === 'restart' || e.signal === 'sync-failed');
    return {
      checked: facts.bringUps.length + looked.length,
      notObserved: looked.filter((e) => e.half === null).length,
      findings: halves.flatMap((half) => [
        ...loopsIn(failures(facts, half), (a, b) => !heldBetween(facts, a, b, limits), limits).map((loop) =>
          toFinding(facts, half, 'sync-loop', loop),
        ),
        ...loopsIn(restarts(facts, half), (a, b) => isSoon(a, b, limits), limits).map((loop) =>
          toFinding(facts, half, 'restart-loop', loop),
        ),
      ]),
    };
  },
};

/** How a turn can end, with what the sentence says of it. */
const endings = {
  failed: 'logged as failed',
  settled: 'settled',
  lost: 'ready, but lost again',
  superseded: 'cut short by what came next',
  unfinished: 'not ready while watched',
  unwatched: 'not watched',
} as const;

/** One turn of a loop: when it was, and how it ended. */
interface Turn {
  readonly time: number;
  readonly earliest: number;
  readonly resolution: number;
  readonly ended: keyof typeof endings;
  readonly evidence: NonEmpty<SourceLine>;
}

/** Runs of turns that follow each other, where there are enough of them. */
function loopsIn(
  turns: readonly Turn[],
  follows: (before: Turn, after: Turn) => boolean,
  { loops: { leastCount } }: Limits,
): readonly NonEmpty<Turn>[] {
  const runs: [Turn, ...Turn[]][] = [];
  for (const turn of turns) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run !== undefined && last !== undefined && follows(last, turn)) run.push(turn);
    else runs.push([turn]);
  }
  return runs.filter((run) => run.length >= leastCount);
}

/** Syncs logged as failed, and the bring-ups that came to nothing without such a line, in the order of time. */
function failures({ timeline, bringUps }: PairFacts, half: string): readonly Turn[] {
  const failed = timeline.events.filter((e) => e.signal === 'sync-failed' && e.half === half);
  const own = bringUps.filter((b) => b.half === half);
  const silent = own.filter((b, index) => {
    const until = own[index + 1]?.start.time ?? timeline.to;
    const told = failed.some((e) => e.time >= b.start.time && e.time <= until);
    return !told && cameToNothing(timeline, b, own[index + 1]);
  });
  return [
    ...failed.map((e) => ({ ...stampOf(e), ended: 'failed' as const, evidence: linesOf(e) })),
    ...silent.map((b) => ({ ...b.start, resolution: 0, ended: b.outcome, evidence: b.evidence })),
  ].sort((a, b) => a.time - b.time);
}

/** Did not settle; work that goes on with a reflash, or a switchover onto the half, is a step and no failure. */
function cameToNothing(
  { events, to: logEnd }: PairTimeline,
  bringUp: BringUp,
  next: BringUp | undefined,
): boolean {
  const { half, outcome, start, watchedTo } = bringUp;
  if (outcome === 'settled' || outcome === 'lost') return outcome === 'lost';
  // The log ends while it is under way: it has not come to anything yet.
  if (outcome === 'unfinished') return watchedTo < logEnd;
  const until = next?.start.time ?? watchedTo;
  const meanwhile = events.filter((e) => e.half === half && e.time > start.time && e.time <= until);
  const isStep = meanwhile.some((e) => isReflash(e) || (e.signal === 'role' && e.value === 'active'));
  return !isStep && !isWithinReflash(events, half, start.time);
}

/** Every restart of a half but those of its reflashes, with how the bring-up that it began ended. */
function restarts({ timeline, bringUps }: PairFacts, half: string): readonly Turn[] {
  return timeline.events
    .filter((e) => e.half === half && e.signal === 'restart')
    .filter((e) => !isWithinReflash(timeline.events, half, e.time))
    .map((e) => {
      const bringUp = bringUps.find(
        (b) => b.half === half && b.cause === 'restart' && b.start.time === e.time,
      );
      return { ...stampOf(e), ended: bringUp?.outcome ?? 'unwatched', evidence: linesOf(e) };
    });
}

/** Between the start and the end of a reflash of the half, a restart belongs to it. */
function isWithinReflash(events: readonly TimelineEvent[], half: string, time: number): boolean {
  const reflashes = events.filter((e) => e.half === half && isReflash(e));
  const before = reflashes.findLast((e) => e.time <= time);
  const after = reflashes.find((e) => e.time > time);
  return before?.signal === 'reflash-start' && after?.signal === 'reflash-end';
}

function isReflash({ signal }: TimelineEvent): boolean {
  return signal === 'reflash-start' || signal === 'reflash-end';
}

function stampOf({
  time,
  earliest,
  resolution,
}: TimelineEvent): Pick<Turn, 'time' | 'earliest' | 'resolution'> {
  return { time, earliest, resolution };
}

/** A ready partner that held between two failures parts them. */
function heldBetween({ readiness }: PairFacts, a: Turn, b: Turn, { rules }: Limits): boolean {
  return spells(readiness.steps, 'yes').some(({ start, end }) => {
    const until = Math.min(end?.earliest ?? b.time, b.time);
    return until - Math.max(start.time, a.time) >= rules.holdMs;
  });
}

function isSoon(a: Turn, b: Turn, { loops: { restartMs } }: Limits): boolean {
  return between(a, b).high * 1000 <= restartMs;
}

function toFinding(
  { timeline }: PairFacts,
  half: string,
  id: 'sync-loop' | 'restart-loop',
  turns: NonEmpty<Turn>,
): Finding {
  const [first, ...rest] = turns;
  const last = rest.at(-1) ?? first;
  const seconds = (last.time - first.time) / 1000;
  const did = id === 'sync-loop' ? 'failed to synchronise' : 'restarted';
  const ended = [...new Set(turns.map((t) => t.ended))];
  const counts = ended.map((word) => ({ word, count: turns.filter((t) => t.ended === word).length }));
  const [line, ...lines] = turns.flatMap((t) => [...t.evidence]);
  return {
    id,
    severity: 'warning',
    pair: timeline.pair,
    half,
    from: first.time,
    to: last.time,
    statement: `Half ${half} ${did} ${turns.length} times within ${sayDuration(seconds)}: ${counts.map(({ word, count }) => `${count} ${endings[word]}`).join(', ')}.`,
    figures: { count: turns.length, seconds, ...Object.fromEntries(counts.map((c) => [c.word, c.count])) },
    evidence: uniqueLines([line ?? first.evidence[0], ...lines]),
  };
}
