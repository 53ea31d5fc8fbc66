import { decibans, evidenceBound } from '../statistics/evidence-bound.ts';
import { atLeastOf } from '../statistics/poisson-binomial.ts';
import { clip, shareAround, total, totalWithin } from '../timeline/coverage.ts';
import { linesOf, uniqueLines } from '../timeline/evidence.ts';
import { countUntil } from '../timeline/tracks.ts';
import type { Instant, Interval, NonEmpty, SourceLine, TimelineEvent } from '../vocabulary.ts';
import { capped, type Trouble } from './cause.ts';

/** How many failures and losses of the episode came soon after a change of some kind. */
export interface Coincidence {
  readonly count: number;
  readonly failures: number;
  readonly windowSeconds: number;
  /** Their bounds leave no doubt that they came after, and within the window. */
  readonly isSure: boolean;
  /** How many chance alone would give. */
  readonly expected: number;
  readonly decibans: number;
  /** The changes, each with the failure that followed it. */
  readonly evidence: NonEmpty<SourceLine>;
}

/**
 * Failures that may have followed a change within the window, the same change no other before. If they had nothing to do with
 * each other, each would with a chance: the share of the observed time that lies within a window, or where
 * changes come in a storm, that of its own last hour or minutes, whichever is greater. What the bounds of the coarsest failure leave open, and
 * stamps of whole seconds, widen every window, which is on the side of chance. `null` without a change or a failure.
 * Source: design.md, section 4, Coincidence; the tail is exact, the weight its evidence bound.
 */
export function coincidenceOf(trouble: Trouble, changes: readonly TimelineEvent[]): Coincidence | null {
  const windowMs = trouble.limits.coincidenceSeconds * 1000;
  const { from } = trouble.episode;
  const failures = failuresOf(trouble);
  const near = changes.filter((c) => c.time >= from - windowMs && c.time <= trouble.to);
  const followed = followedOf(failures, near, windowMs);
  const [first, ...rest] = followed;
  if (first === undefined) return null;
  const span = [{ from: from - windowMs, to: Math.max(trouble.to, from) }];
  const seen = clip(trouble.facts.timeline.observed, from - windowMs, trouble.to);
  const widestMs = Math.max(...failures.map((f) => f.time - f.earliest));
  const observed = total(seen) > 0 ? seen : span;
  const windowOf = ({ time, earliest, resolution }: TimelineEvent): Interval => ({
    from: earliest - resolution,
    to: time + windowMs + widestMs + resolution,
  });
  const windows = near.map(windowOf);
  // A window that the log cuts short weighs as if the log had gone on, else a change in its last second would explain all.
  const cutMs = Math.max(0, ...windows.map(({ to }) => to - trouble.to));
  const share = (totalWithin(observed, windows) + cutMs) / (total(observed) + cutMs);
  const chances = failures.map((failure, index) =>
    Math.max(
      share,
      ...leadsOf(failure, failures[index - 1], trouble, changes).map(({ span, own }) =>
        shareAround(span, own.map(windowOf)),
      ),
    ),
  );
  const p = atLeastOf(chances, followed.length);
  return {
    count: followed.length,
    failures: failures.length,
    windowSeconds: trouble.limits.coincidenceSeconds,
    isSure: followed.every(({ change, failure }) => surelyFollows(failure, change, windowMs)),
    expected: chances.reduce((sum, chance) => sum + chance, 0),
    decibans: capped(decibans(evidenceBound(p)), trouble.limits),
    evidence: uniqueLines([
      ...linesOf(first.change),
      ...first.failure.evidence,
      ...rest.flatMap(({ change, failure }) => [...linesOf(change), ...failure.evidence]),
    ]),
  };
}

interface Followed {
  readonly change: TimelineEvent;
  readonly failure: Failure;
}

/** The failures that may have followed a change, each with the last change since the failure before it. */
function followedOf(
  failures: readonly Failure[],
  changes: readonly TimelineEvent[],
  windowMs: number,
): readonly Followed[] {
  return failures.flatMap((failure, index) => {
    const since = failures[index - 1]?.time ?? Number.NEGATIVE_INFINITY;
    const change = changes.findLast(
      (c) => c.time > since && c.earliest <= failure.time && failure.earliest - c.time <= windowMs,
    );
    return change === undefined ? [] : [{ change, failure }];
  });
}

/** A time before a failure, and the changes in it. */
interface Lead {
  readonly span: Interval;
  readonly own: readonly TimelineEvent[];
}

/**
 * The hour before a failure and its last ten minutes, as far as no other failure lies in them, where there are several changes in
 * them: they may be those of a storm, or of one that has just begun.
 */
function leadsOf(
  { time, earliest }: Failure,
  before: Failure | undefined,
  { facts, limits: { stormSeconds } }: Trouble,
  changes: readonly TimelineEvent[],
): readonly Lead[] {
  const begin = Math.max(before?.time ?? facts.timeline.from, facts.timeline.from);
  const lead = (seconds: number): Lead => {
    const from = Math.max(earliest - seconds * 1000, begin);
    const own = changes.slice(countUntil(changes, from), countUntil(changes, time));
    return { span: { from, to: time }, own: own.filter((c) => c.earliest >= from) };
  };
  return stormSeconds.map(lead).filter(({ own }) => own.length > 1);
}

interface Failure extends Instant {
  readonly evidence: NonEmpty<SourceLine>;
}

/** Ends of failed attempts, and losses of a ready partner that nobody planned, those of restarts included: what brought the restart may show. */
function failuresOf({ facts, episode: { failed, from } }: Trouble): readonly Failure[] {
  const ends = failed
    .filter((a) => a.outcome === 'failed')
    .map(({ end, evidence }): Failure => ({ ...end, evidence: [evidence.at(-1) ?? evidence[0]] }));
  const losses = facts.losses
    .filter(({ event, kind }) => kind !== 'planned' && event.time >= from)
    .map(({ event }): Failure => ({ time: event.time, earliest: event.earliest, evidence: linesOf(event) }));
  return [...losses, ...ends].sort((a, b) => a.time - b.time);
}

function surelyFollows(failure: Failure, change: TimelineEvent, windowMs: number): boolean {
  return change.time <= failure.earliest && failure.time - change.earliest <= windowMs;
}

/** One sentence: so many failures followed, as far as their bounds tell, and so many by chance. */
export function sayCoincidence(
  { count, failures, windowSeconds, isSure, expected }: Coincidence,
  what: string,
): string {
  const came = isSure ? 'came' : 'came, or may have come,';
  const chance = expected < 0.05 ? 'less than 0.1' : expected.toFixed(1);
  return `${count} of ${failures} losses and failed attempts ${came} within ${windowSeconds} s after ${what}; chance alone would give ${chance}.`;
}
