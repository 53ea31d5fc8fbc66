/**
 * The most that a p-value can speak against chance, as a likelihood ratio: `1 / (-e * p * ln p)` below 1/e, else 1.
 * Source: Sellke, Bayarri and Berger, Calibration of p Values for Testing Precise Null Hypotheses, The American
 * Statistician 55 (2001), section 2 (from memory).
 */
export function evidenceBound(p: number): number {
  return p >= 1 / Math.E ? 1 : 1 / (-Math.E * Math.max(p, 1e-300) * Math.log(Math.max(p, 1e-300)));
}

/** A likelihood ratio in decibans: ten times its decimal logarithm; 10 is ten to one. Source: Good, Biometrika 66 (1979). */
export function decibans(likelihoodRatio: number): number {
  return 10 * Math.log10(likelihoodRatio);
}
