import { between } from '../timeline/durations.ts';
import { linesOf, uniqueLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { countUntil, countWhile, type Spell, spells, track } from '../timeline/tracks.ts';
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
    const ready = spells(facts.readiness.steps, 'yes');
    const looked = events.filter((e) => e.signal === 'restart' || e.signal === 'sync-failed');
    return {
      checked: facts.bringUps.length + looked.length,
      notObserved: looked.filter((e) => e.half === null).length,
      findings: halves.flatMap((half) => [
        ...loopsIn(failures(facts, half), (a, b) => !heldBetween(ready, a, b, limits), limits).map((loop) =>
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
  lost: 'ready, then lost',
  superseded: 'superseded by the next start',
  unfinished: 'not ready while observed',
  unwatched: 'not observed',
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
  const failed = track(timeline, half, 'sync-failed');
  const isWithinReflash = withinReflash(timeline, half);
  const own = bringUps.filter((b) => b.half === half);
  const silent = own.filter((b, index) => {
    const until = own[index + 1]?.start.time ?? timeline.to;
    const next = failed[countUntil(failed, b.start.time, 'before')];
    const told = next !== undefined && next.time <= until;
    return !told && cameToNothing(timeline, b, own[index + 1], isWithinReflash);
  });
  return [
    ...failed.map((e) => ({ ...stampOf(e), ended: 'failed' as const, evidence: linesOf(e) })),
    ...silent.map((b) => ({ ...b.start, resolution: 0, ended: b.outcome, evidence: b.evidence })),
  ].sort((a, b) => a.time - b.time);
}

/** Did not settle; work that goes on with a reflash, or a switchover onto the half, is a step and no failure. */
function cameToNothing(
  timeline: PairTimeline,
  bringUp: BringUp,
  next: BringUp | undefined,
  isWithinReflash: (time: number) => boolean,
): boolean {
  const { half, outcome, start, watchedTo } = bringUp;
  if (outcome === 'settled' || outcome === 'lost') return outcome === 'lost';
  // The log ends while it is under way: it has not come to anything yet.
  if (outcome === 'unfinished') return watchedTo < timeline.to;
  const until = next?.start.time ?? watchedTo;
  const isStep = (['reflash-start', 'reflash-end', 'role'] as const).some((signal) => {
    const steps = track(timeline, half, signal);
    const meanwhile = steps.slice(countUntil(steps, start.time), countUntil(steps, until));
    return meanwhile.some((e) => signal !== 'role' || e.value === 'active');
  });
  return !isStep && !isWithinReflash(start.time);
}

/** Every restart of a half but those of its reflashes, with how the bring-up that it began ended. */
function restarts({ timeline, bringUps }: PairFacts, half: string): readonly Turn[] {
  const isWithinReflash = withinReflash(timeline, half);
  const begun = bringUps.filter((b) => b.half === half && b.cause === 'restart');
  const outcomes = new Map(begun.map((b) => [b.start.time, b.outcome]));
  return track(timeline, half, 'restart')
    .filter((e) => !isWithinReflash(e.time))
    .map((e) => ({ ...stampOf(e), ended: outcomes.get(e.time) ?? 'unwatched', evidence: linesOf(e) }));
}

/** Between the start and the end of a reflash of the half, a restart belongs to it. */
function withinReflash({ events }: PairTimeline, half: string): (time: number) => boolean {
  const reflashes = events.filter(
    (e) => e.half === half && (e.signal === 'reflash-start' || e.signal === 'reflash-end'),
  );
  return (time) => {
    const place = countUntil(reflashes, time);
    return reflashes[place - 1]?.signal === 'reflash-start' && reflashes[place]?.signal === 'reflash-end';
  };
}

function stampOf({
  time,
  earliest,
  resolution,
}: TimelineEvent): Pick<Turn, 'time' | 'earliest' | 'resolution'> {
  return { time, earliest, resolution };
}

/** A ready partner that held between two failures parts them. */
function heldBetween(ready: readonly Spell[], a: Turn, b: Turn, { rules }: Limits): boolean {
  const from = countWhile(ready, ({ end }) => end !== null && end.time <= a.time);
  const to = countWhile(ready, ({ start }) => start.time < b.time);
  return ready.slice(from, to).some(({ start, end }) => {
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
