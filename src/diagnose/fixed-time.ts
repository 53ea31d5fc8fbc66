import { decibans, evidenceBound } from '../statistics/evidence-bound.ts';
import { exponentialSpread } from '../statistics/exponential-spread.ts';
import { medianOffset } from '../statistics/median-offset.ts';
import { capped } from './cause.ts';
import type { DiagnoseLimits } from './limits.ts';

/** Durations that may all be the same. */
export interface FixedTime {
  readonly medianSeconds: number;
  /** Median distance from the median, in seconds. */
  readonly spreadSeconds: number;
  readonly count: number;
  /** They scatter little enough to be called the same. */
  readonly fixed: boolean;
  readonly decibans: number;
}

/**
 * Whether durations, in seconds, come at a fixed time: too alike for an exponential, whose evidence bound is the weight,
 * and scattered by no more than a share of their median, since many things are more alike than an exponential. Only the
 * latest are looked at; `null` with too few.
 */
export function fixedTimeOf(durations: readonly number[], limits: DiagnoseLimits): FixedTime | null {
  const latest = durations.slice(-limits.patternMost);
  const spread = exponentialSpread(latest);
  const middle = medianOffset(latest);
  if (latest.length < limits.patternCount || spread === null || middle === null) return null;
  return {
    medianSeconds: middle.median,
    spreadSeconds: middle.spread,
    count: latest.length,
    fixed: middle.spread <= middle.median * limits.fixedShare,
    decibans: capped(decibans(evidenceBound(spread.p)), limits),
  };
}
