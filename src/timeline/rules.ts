/** Every threshold of the timeline and of the facts read off it, with its unit and source. */
export interface TimelineRules {
  /** Two exact sightings of one change lie at most this far apart. Source: design.md, section 2, Merging. */
  readonly mergeMs: number;
  /** A loss this close to a removal, or after a restart, belongs to it. Source: design.md, sections 2 and 4. */
  readonly belongsMs: number;
  /** How far a logged happening may lie from the change of identity that shows it. Chosen here: three polls of 10 s. */
  readonly lagMs: number;
  /** A field note this close to a logged happening of the same kind tells of the same one. Chosen here. */
  readonly noteLagMs: number;
  /** A state that has held this long is settled. Source: design.md, section 1, settled. */
  readonly holdMs: number;
  /** Light not steady after five minutes: stop and call for support. Common practice, no source. */
  readonly lightLimitSeconds: number;
  /** The clocks of two files are compared by at least so many changes that both saw. Source: design.md, section 2, Clocks. */
  readonly offsetCount: number;
  /** Differences of clocks that scatter more than this, or than the spacing of the polls, measure nothing. Source: design.md, section 2, Clocks. */
  readonly offsetSpreadMs: number;
  /** A command this long before a switchover caused it. Source: design.md, section 4, Switchovers. */
  readonly commandMs: number;
  /** A module without a known serial that was out this long is another one. Source: design.md, section 5. */
  readonly outMs: number;
  /** A new module says what it is within this time. Source: design.md, section 5, awaits. */
  readonly identifyMs: number;
  /** Losses of one pair that follow each other within this belong to one bout. Source: design.md, section 4, Losses. */
  readonly boutMs: number;
  /** Both halves active, or neither, for longer than this is a conflict. Source: design.md, section 5. */
  readonly conflictSeconds: number;
  /** Flapping: half-life of the penalty, the figure above which it starts and the one below which it ends. */
  readonly flapping: { readonly halfLifeSeconds: number; readonly cutOff: number; readonly reuse: number };
}

export const defaultRules: TimelineRules = {
  mergeMs: 2_000,
  belongsMs: 5_000,
  lagMs: 30_000,
  noteLagMs: 900_000,
  holdMs: 60_000,
  lightLimitSeconds: 300,
  offsetCount: 5,
  offsetSpreadMs: 2_000,
  commandMs: 30_000,
  outMs: 120_000,
  identifyMs: 900_000,
  boutMs: 43_200_000,
  conflictSeconds: 1,
  // Source: design.md, section 4, Flapping; the method is that of RFC 2439.
  flapping: { halfLifeSeconds: 900, cutOff: 2, reuse: 0.75 },
};
