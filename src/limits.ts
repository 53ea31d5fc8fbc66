import { type Limits as AnalyzeLimits, defaultLimits as analyzeLimits } from './analyze/limits.ts';
import { type DiagnoseLimits, defaultDiagnoseLimits } from './diagnose/limits.ts';
import { defaultFleetLimits, type FleetLimits } from './fleet/limits.ts';
import { defaultPrepareLimits, type PrepareLimits } from './prepare-limits.ts';
import { defaultVerifyLimits, type VerifyLimits } from './verify/limits.ts';

/** The limits of every stage. They travel with what was analysed by them, so that no later stage can go by others. */
export interface Limits extends AnalyzeLimits {
  readonly verify: VerifyLimits;
  readonly diagnose: DiagnoseLimits;
  readonly fleet: FleetLimits;
  readonly prepare: PrepareLimits;
}

export const defaultLimits: Limits = {
  ...analyzeLimits,
  verify: defaultVerifyLimits,
  diagnose: defaultDiagnoseLimits,
  fleet: defaultFleetLimits,
  prepare: defaultPrepareLimits,
};

/** Limits with another hold time, in seconds. */
export function limitsWithHold(holdSeconds: number | null): Limits {
  if (holdSeconds === null) return defaultLimits;
  return { ...defaultLimits, rules: { ...defaultLimits.rules, holdMs: holdSeconds * 1000 } };
}
