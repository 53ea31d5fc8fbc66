import { defaultRules } from '../timeline/rules.ts';

/** Every threshold of the checks, in seconds, with its source. */
export interface VerifyLimits {
  /** Ready without a break for this long before the first removal. Source: design.md, section 5. */
  readonly baselineSeconds: number;
  /** Ready without a break for this long at the end. Source: design.md, section 5. */
  readonly soakSeconds: number;
  /** A new module takes the standby role within this time. Source: design.md, section 5. */
  readonly roleSeconds: number;
  /** The last bring-up of a new module is ready within this time. Source: design.md, section 5. */
  readonly syncSeconds: number;
  /** The least gap without an active half, or with two, that counts. Source: design.md, section 5. */
  readonly conflictSeconds: number;
  /** Both halves of a pair within this time are one swap. Source: design.md, section 5. */
  readonly sameSwapSeconds: number;
}

export const defaultVerifyLimits: VerifyLimits = {
  baselineSeconds: 900,
  soakSeconds: 1800,
  roleSeconds: 900,
  syncSeconds: 900,
  conflictSeconds: defaultRules.conflictSeconds,
  sameSwapSeconds: 86_400,
};
