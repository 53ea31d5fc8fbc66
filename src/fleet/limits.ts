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
  };
  /** Weight of the newest sync time and width of the limits. Source: NIST/SEMATECH e-Handbook, section 6.3.2.4. */
  readonly ewma: { readonly weight: number; readonly width: number };
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
  forecast: { confidence: 0.9, rounds: 2000, seed: 1, steps: 40 },
  ewma: { weight: 0.3, width: 3 },
  leastDrift: 20,
  leastMonths: 10,
  readyMs: 86_400_000,
};

/** A year of observed time, in seconds. Source: design.md, section 7: 365.25 days. */
export const yearSeconds = 365.25 * 86_400;
