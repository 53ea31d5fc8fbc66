import { decibans, evidenceBound } from '../statistics/evidence-bound.ts';
import { fisherExact } from '../statistics/fisher-exact.ts';
import { uniqueLines } from '../timeline/evidence.ts';
import type { NonEmpty, SourceLine } from '../vocabulary.ts';
import { capped, type Trouble } from './cause.ts';
import { identityLines } from './identity-lines.ts';
import type { Observation } from './observations.ts';

/** How often some halves failed, and how often they were ready. */
export interface Tally {
  readonly failed: number;
  readonly ready: number;
}

export function tally(observations: readonly Observation[]): Tally {
  const ready = observations.filter((o) => o.ready).length;
  return { failed: observations.length - ready, ready };
}

export function sayTally({ failed, ready }: Tally): string {
  return `failed ${failed}, ready ${ready}`;
}

/** Weight of one tally failing more than another, by Fisher's exact test, in decibans. */
export function tallyDecibans(own: Tally, others: Tally, { limits }: Trouble): number {
  const p = fisherExact({ first: [own.failed, own.ready], second: [others.failed, others.ready] });
  return capped(decibans(evidenceBound(p)), limits);
}

/** A half of a pair as one text: modules are counted by the places they were in. */
export function placeOf({ facts, half }: Observation): string {
  return `${facts.timeline.pair} half ${half}`;
}

/** Whether the latest of some observations, of all pairs together, is a ready partner; false without any. */
export function lastWasReady(observations: readonly Observation[]): boolean {
  const last = observations.reduce<Observation | null>(
    (latest, o) => (latest === null || o.at >= latest.at ? o : latest),
    null,
  );
  return last?.ready ?? false;
}

/** The lines that say which module was where, of the latest observations. */
export function linesBehind(observations: readonly Observation[], trouble: Trouble): NonEmpty<SourceLine> {
  const [first, ...rest] = observations.slice(-6).flatMap(identityLines);
  return first === undefined ? trouble.evidence : uniqueLines([first, ...rest]);
}
