import { defaultRules, type TimelineRules } from '../timeline/rules.ts';

/** Every threshold of the analyzers, with its unit and source. */
export interface Limits {
  /** Hold time, stable light and flapping are decided where the facts are read. */
  readonly rules: TimelineRules;
  /** Roles may be in conflict at least this long before it is reported: a switchover takes a moment. Source: design.md, section 5. */
  readonly conflictSeconds: number;
}

export const defaultLimits: Limits = { rules: defaultRules, conflictSeconds: 1 };
