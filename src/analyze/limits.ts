import { defaultRules, type TimelineRules } from '../timeline/rules.ts';

/** Every threshold of the analyzers, with its unit and source. */
export interface Limits {
  /** Hold time, stable light and flapping are decided where the facts are read. */
  readonly rules: TimelineRules;
  /** Roles may be in conflict at least this long before it is reported: a switchover takes a moment. Source: design.md, section 5. */
  readonly conflictSeconds: number;
  /**
   * Where commands are never logged, a switchover this close to a removal or reflash, or to the end of that work, is taken
   * for a part of it. Chosen here: the lead that a swap is given. Source: design.md, section 5, `from`.
   */
  readonly workMs: number;
  /**
   * Chance of any false word of one analyzer about a fleet without trouble, no matter what number of questions is asked of however
   * many pairs. Chosen here: a warning sends a person to the cabinet, so one in a hundred, not one in twenty.
   */
  readonly significance: number;
  readonly coincidence: CoincidenceLimits;
  readonly loops: LoopLimits;
  readonly rhythm: RhythmLimits;
}

export interface CoincidenceLimits {
  /** A change precedes a loss if it comes at most this long before. Source: design.md, section 4, Coincidence. */
  readonly windowMs: number;
  /** So many losses at least must have been preceded: two may be one cause told twice. Chosen here. */
  readonly leastCount: number;
  /**
   * A change so long before a loss or less is compared with the others of that time. Chosen here: design.md, section 4, wants
   * minutes; it is short beside a storm of an hour, and long beside the window.
   */
  readonly leadMs: number;
  /** The late part of that time: where a storm has just begun, the changes gather in it. Chosen here: half. */
  readonly lateMs: number;
}

export interface LoopLimits {
  /** So many in a row are a loop: a second attempt is common practice, no source; a third is not. */
  readonly leastCount: number;
  /** Restarts at most this far apart belong together: longer than a bring-up may take (design.md, section 5, synchronised), twice. */
  readonly restartMs: number;
}

export interface RhythmLimits {
  /** Spacings, or bouts for the hour of the day, without which nothing is said. Chosen here: both tests keep their level from five on. */
  readonly leastCount: number;
  /** A rhythm keeps its spacings to this coefficient of variation: a pair that only needs a while to recover does not. Chosen here. */
  readonly variation: number;
  /** Bounds of a loss wider than this share of the mean spacing, or of the day, could make a rhythm, or hide it. Chosen here. */
  readonly boundsShare: number;
  /** Whole days that must have been observed before an hour of the day stands out. Chosen here: a working week and its end. */
  readonly leastDays: number;
  /** Share of the log that may be unobserved, lest the hours that were read stand out. Chosen here. */
  readonly unobservedShare: number;
  /** Spans about the middle, in hours, of which the sentence says the narrowest that holds `shareSaid` of the bouts. Chosen here. */
  readonly hoursSaid: readonly number[];
  readonly shareSaid: number;
}

export const defaultLimits: Limits = {
  rules: defaultRules,
  conflictSeconds: defaultRules.conflictSeconds,
  workMs: 900_000,
  significance: 0.01,
  coincidence: { windowMs: 30_000, leastCount: 3, leadMs: 600_000, lateMs: 300_000 },
  loops: { leastCount: 3, restartMs: 1_800_000 },
  rhythm: {
    leastCount: 5,
    variation: 0.25,
    boundsShare: 0.1,
    leastDays: 7,
    unobservedShare: 0.05,
    hoursSaid: [1, 2, 4, 6, 8, 12],
    shareSaid: 0.75,
  },
};
