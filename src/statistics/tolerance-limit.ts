import { binomialAtMost } from './distributions.ts';

/** An upper tolerance limit, `null` where the sample is too small for one; `needed` is the least sample that gives one. */
export interface ToleranceLimit {
  readonly value: number | null;
  readonly needed: number;
}

/**
 * The value that at least the share `coverage` of all lie under, with `confidence`, no matter what their distribution: the
 * least order statistic that does. What was not seen to end goes in as `Infinity`; a limit that falls there is `null`.
 * Source: Wilks, Determination of Sample Sizes for Setting Tolerance Limits, Annals of Mathematical Statistics 12 (1941);
 * NIST/SEMATECH e-Handbook of Statistical Methods, section 7.2.6.4.
 */
export function upperToleranceLimit(
  values: readonly number[],
  { coverage, confidence }: { readonly coverage: number; readonly confidence: number },
): ToleranceLimit {
  const needed = Math.ceil(Math.log(1 - confidence) / Math.log(coverage));
  const sorted = [...values].sort((a, b) => a - b);
  const value = sorted.find((_, index) => binomialAtMost(index, sorted.length, coverage) >= confidence);
  return { value: value === undefined || value === Infinity ? null : value, needed };
}
