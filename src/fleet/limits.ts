/** Every threshold of the fleet review, with its unit and source. */
export interface FleetLimits {
  /** Share of false ones among the pairs said to stand out. Source: design.md, section 7. */
  readonly falseDiscovery: number;
  readonly confidence: number;
  /** Below so many observed seconds nothing is said per year and no pair is judged. Source: design.md, section 7: 30 days. */
  readonly leastObservedSeconds: number;
  /** The power is told of a pair with so many times the rate of the others. Chosen here: what a person would want to be told. */
  readonly powerRatio: number;
  /**
   * A change of rate is asked from so many bouts on, and its denser part has so many at least: a log that was saved because of a loss
   * ends with one, which is no change. Chosen here.
   */
  readonly change: { readonly leastBouts: number; readonly leastDense: number };
  /** Between groups, bouts of several pairs that follow each other within so many milliseconds are one storm. Chosen here: an hour. */
  readonly stormMs: number;
  /** Pairs are struck together where at least two bouts, and more than this share, follow another so closely. Chosen here: twice what chance gives at most. */
  readonly struckShare: number;
  /** The limits of a mean cumulative function are told while so many pairs are watched. Chosen here by simulation. */
  readonly leastCurvePairs: number;
  /** The campaign: confidence of its interval, draws, the seed that makes them the same each time, and how many steps lead there. */
  readonly forecast: {
    readonly confidence: number;
    readonly rounds: number;
    readonly seed: number;
    readonly steps: number;
    /** Fewer reflashes give no interval. Chosen by simulation: among so many a slow or failing one in seven nearly always shows. */
    readonly least: number;
    /** So many reflashes, the newest, are learnt from. Chosen here: more would change no digit, and old ones tell of old firmware. */
    readonly newest: number;
    /** A reflash that is not ready by then is stopped. Source: design.md, section 5, awaits. */
    readonly stopSeconds: number;
  };
  /**
   * Drift of sync times: the weight of the newest, small, since a change that stays matters and one long sync does not (Lucas and
   * Saccucci, Technometrics 32 (1990), 0.05 to 0.25 for small changes, from memory); the share of fleets without any drift in which
   * any average may leave its limits; of each group so many orders of its times are tried, fewer where that takes more than
   * `mostSteps` averages, by the same seed each time. Chosen here.
   */
  readonly ewma: {
    readonly weight: number;
    readonly significance: number;
    readonly rounds: number;
    readonly mostSteps: number;
    readonly seed: number;
  };
  /** Bouts of the next year: of pairs observed for so long, and how close those of several pairs lie that come from one trouble. */
  readonly nextYear: {
    /** Source: design.md, section 7: per year from 30 observed days. */
    readonly leastSeconds: number;
    /** Chosen here: an hour. */
    readonly waveMs: number;
  };
  /**
   * Groups of sync times: a group of fewer attempts is small, and compared by so many deals at random, from a seed that makes them
   * the same each time. Chosen by simulation.
   */
  readonly comparison: { readonly large: number; readonly rounds: number; readonly seed: number };
  /** Fewer sync times than this say nothing of a drift. Chosen here: ten to learn from, as many to judge. */
  readonly leastDrift: number;
  /** A trend over fewer months than this is not judged. Source: US EPA, QA/G-9S (2006), section 4.3.4: the normal form from 10 on. */
  readonly leastMonths: number;
  /** A pair is fit for a swap if it had a ready partner without a break for so long, in milliseconds. Chosen here: a day. */
  readonly readyMs: number;
}

export const defaultFleetLimits: FleetLimits = {
  falseDiscovery: 0.05,
  confidence: 0.95,
  leastObservedSeconds: 30 * 86_400,
  powerRatio: 3,
  change: { leastBouts: 5, leastDense: 3 },
  stormMs: 3_600_000,
  struckShare: 0.2,
  leastCurvePairs: 4,
  forecast: {
    confidence: 0.9,
    rounds: 2000,
    seed: 1,
    steps: 40,
    least: 20,
    newest: 1000,
    stopSeconds: 900,
  },
  ewma: { weight: 0.1, significance: 0.01, rounds: 2000, mostSteps: 4_000_000, seed: 1 },
  nextYear: { leastSeconds: 30 * 86_400, waveMs: 3_600_000 },
  comparison: { large: 30, rounds: 2000, seed: 1 },
  leastDrift: 20,
  leastMonths: 10,
  readyMs: 86_400_000,
};

/** A year of observed time, in seconds. Source: design.md, section 7: 365.25 days. */
export const yearSeconds = 365.25 * 86_400;
