/** Every threshold of the diagnosis, with its unit and source. Where none is named it was chosen here. */
export interface DiagnoseLimits {
  /** From here on the logs speak for a cause: ten to one. Source: Jeffreys, Theory of Probability (1961), appendix B: strong. */
  readonly leadDecibans: number;
  /** Below this a cause is not listed: two to one. */
  readonly listDecibans: number;
  /** More than this no log can say: what stands in it may be wrong itself. */
  readonly mostDecibans: number;
  /** What a state weighs before any count, where by common practice no pair synchronises in it. No source. */
  readonly forbiddingDecibans: number;
  /** The same where something is visibly out of order, but a pair may do without it. Common practice, no source. */
  readonly faultyDecibans: number;
  /** The same where it hinders some pairs and not others. Common practice, no source. */
  readonly hinderingDecibans: number;
  /**
   * What a swap test weighs before any count: a module failed in two places where others work, or modules that work elsewhere
   * failed in one place. Common practice, no source.
   */
  readonly swapTestDecibans: number;
  /**
   * What a trouble that other pairs share by their firmware weighs before any count. Chosen here: all of three others with it and
   * none of three without reach ten to one, fewer do not. No source.
   */
  readonly fleetDecibans: number;
  /** The same of a row of restarts that no failed sync brought: a person tries twice or thrice. Common practice, no source. */
  readonly loopDecibans: number;
  /** A partner that was ready for no longer, or restarts no farther apart, are of one trouble: twice what a bring-up may take (design.md, section 5, synchronised). */
  readonly episodeMs: number;
  /** A half that came in or restarted less than this before has not brought up its links yet. Common practice, no source. */
  readonly startingMs: number;
  /** A module that is out for longer may have been pulled. Common practice, no source. */
  readonly momentSeconds: number;
  /** At most this share of some durations may be of another kind than the rest. Chosen here: one of five. */
  readonly oddShare: number;
  /** What comes so long before a failure may have brought it. Source: design.md, section 4, Coincidence. */
  readonly coincidenceSeconds: number;
  /** Several changes within so many seconds before a failure may be a storm. Source: design.md, section 4, Coincidence: by minutes. */
  readonly stormSeconds: readonly number[];
  /** Median load of the active half above which it has no time to copy. Source: design.md, section 6. */
  readonly loadPercent: number;
  /** Free memory below this share of the peers' is short. Source: design.md, section 6. */
  readonly memoryShare: number;
  /** Least number of aborts, restarts or drop-outs that make a pattern. */
  readonly patternCount: number;
  /** Aborts or restarts whose spread is at most this share of their median come at a fixed time. */
  readonly fixedShare: number;
  /** At most so many of the latest durations are looked at. */
  readonly patternMost: number;
  /** Least number of attempts of the same model and firmware that make a reference by themselves. */
  readonly referenceCount: number;
  /** Least number of other pairs in trouble before a firmware is suspected. */
  readonly otherPairs: number;
  /** Confidence of every interval. */
  readonly confidence: number;
  /** A pair last read this long before the end of all logs has no data since. Chosen here: an hour of silence is seen. */
  readonly staleMs: number;
  /** A critical finding so long before the end of a pair's log is history. Chosen here: a month. */
  readonly recentMs: number;
}

export const defaultDiagnoseLimits: DiagnoseLimits = {
  leadDecibans: 10,
  listDecibans: 3,
  mostDecibans: 30,
  forbiddingDecibans: 10,
  faultyDecibans: 9,
  hinderingDecibans: 6,
  swapTestDecibans: 10,
  fleetDecibans: 7,
  loopDecibans: 10,
  episodeMs: 1_800_000,
  startingMs: 30_000,
  momentSeconds: 60,
  oddShare: 0.2,
  coincidenceSeconds: 30,
  stormSeconds: [3600, 600],
  loadPercent: 90,
  memoryShare: 0.1,
  patternCount: 3,
  fixedShare: 0.1,
  patternMost: 20,
  referenceCount: 3,
  otherPairs: 2,
  confidence: 0.95,
  staleMs: 3_600_000,
  recentMs: 30 * 86_400_000,
};
