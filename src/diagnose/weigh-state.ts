import { decibans } from '../statistics/evidence-bound.ts';
import type { NonEmpty, Point, SourceLine } from '../vocabulary.ts';
import { capped, doubted, type Trouble, type Weighing } from './cause.ts';
import type { DiagnoseLimits } from './limits.ts';
import type { Observation } from './observations.ts';

/** Whether a state held in one observation, with the lines that say so. */
export interface Seen {
  readonly holds: boolean;
  /** One plain sentence: what was so, then. */
  readonly statement: string;
  readonly evidence: NonEmpty<SourceLine>;
}

export interface StateTest {
  /** What it weighs before any count. */
  readonly priorDecibans: number;
  /** The state in a few words, to end "was so": `firmware that differs`. */
  readonly words: string;
  /** `null` where the logs do not tell. */
  test(observation: Observation): Seen | null;
}

/**
 * Weighs a state by counting: how often it held when attempts failed since the trouble began, against how often it held
 * when a pair of the files was ready all the same. The ratio of the two shares, each with half a case added (Jeffreys'
 * prior, from memory), is the likelihood ratio; its decibans are added to what the state weighs by common practice. Where this very
 * pair was ready in spite of it, it hinders at most, and what other pairs were ready without says no more than what this one was.
 */
export function weighState(trouble: Trouble, { priorDecibans, words, test }: StateTest): Weighing {
  const now = test(presentOf(trouble));
  const failures = failuresOf(trouble);
  const told = failures.flatMap((o) => test(o) ?? []);
  // Where nothing has certainly failed yet, or no line tells how it was then, what there is now stands for a failure.
  const isAlone = told.length === 0;
  const failed = isAlone && now !== null ? [now] : told;
  const held = failed.filter((s) => s.holds);
  const shown = now?.holds === true ? now : held.at(-1);
  if (shown === undefined) return doubted(now === null ? [] : [pointOf(now)]);
  const observed = trouble.observations.filter((o) => o.ready);
  const ready = observed.flatMap((o) => test(o) ?? []);
  const own = observed.filter((o) => o.facts === trouble.facts).flatMap((o) => test(o) ?? []);
  const heldReady = ready.filter((s) => s.holds);
  const atFailures = isAlone
    ? failures.length === 0
      ? 'No attempt is known to have failed;'
      : 'The state when attempts failed was not logged;'
    : `This was so at ${held.length} of ${said(told.length, 'failed attempt')} and`;
  const counted = `${atFailures} ${sayReady(heldReady.length, ready.length, isAlone)}`;
  const weight = weightOf({ failed, ready, own }, priorDecibans, trouble.limits);
  return {
    // What never was so when an attempt failed brought none of them.
    decibans: held.length === 0 ? 0 : capped(weight, trouble.limits),
    for: [{ statement: `${sayShown(shown, now)} ${counted}`, evidence: shown.evidence }],
    against: [
      ...(now !== null && !now.holds
        ? [{ ...pointOf(now), statement: `At the end of the log: ${lower(now.statement)}` }]
        : []),
      ...spared(heldReady, `A partner was ready in spite of ${words}`),
      ...spared(
        failed.filter((s) => !s.holds),
        `Attempts failed without ${words}`,
      ),
    ],
  };
}

interface Counts {
  readonly failed: readonly Seen[];
  /** When a partner was ready, of all pairs and of this one. */
  readonly ready: readonly Seen[];
  readonly own: readonly Seen[];
}

function weightOf(
  { failed, ready, own }: Counts,
  prior: number,
  { hinderingDecibans }: DiagnoseLimits,
): number {
  const against = (others: readonly Seen[]): number => decibans(shareOf(failed) / shareOf(others));
  if (!own.some((s) => s.holds)) return prior + against(ready);
  return Math.min(prior, hinderingDecibans) + Math.min(against(ready), against(own));
}

function shareOf(seen: readonly Seen[]): number {
  return (seen.filter((s) => s.holds).length + 0.5) / (seen.length + 1);
}

/** The failed attempts of the trouble. */
function failuresOf({ observations, facts, from }: Trouble): readonly Observation[] {
  return observations.filter((o) => !o.ready && o.facts === facts && o.to >= from);
}

/** How often it was so when a partner was ready, as far as that was logged. */
function sayReady(held: number, all: number, isAlone: boolean): string {
  if (all === 0) return 'whether this was so with a ready partner was not logged.';
  const times = `at ${held} of ${said(all, 'time')} with a ready partner`;
  return isAlone ? `this was so ${times}.` : `${times}.`;
}

/** The end of the log, as an observation. */
function presentOf({ facts, half, from, to }: Trouble): Observation {
  const last = facts.timeline.halves.at(-1);
  return { facts, half: half ?? last ?? '', serial: null, ready: false, from, to, at: to };
}

function spared(seen: readonly Seen[], words: string): readonly Point[] {
  const last = seen.at(-1);
  if (last === undefined) return [];
  return [{ statement: `${words}: ${said(seen.length, 'time')}.`, evidence: last.evidence }];
}

function pointOf({ statement, evidence }: Seen): Point {
  return { statement, evidence };
}

/** A state that does not last to the end of the log was so when an attempt last failed. */
function sayShown(shown: Seen, now: Seen | null): string {
  return shown === now ? shown.statement : `When an attempt last failed: ${lower(shown.statement)}`;
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function said(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
