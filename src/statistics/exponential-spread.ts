/** How far some durations scatter, and how often an exponential would scatter as little. */
export interface Spread {
  /** Gini statistic: 0 if all are alike, about 0.5 for an exponential, 1 if one is all. */
  readonly gini: number;
  /** Probability of a value as low as this if the durations were exponential: near 0 they are alike. */
  readonly p: number;
}

/**
 * Whether durations are more alike than those of an exponential, no matter what its mean. Durations in any unit, positive;
 * `null` with fewer than two or where all are 0. Source: Gail and Gastwirth, A Scale-Free Goodness-of-Fit Test for the
 * Exponential Distribution Based on the Gini Statistic, Journal of the Royal Statistical Society B 40 (1978): under an
 * exponential, `(n - 1) * gini` is a sum of n - 1 uniform variables (the law from memory; tests simulate it).
 */
export function exponentialSpread(durations: readonly number[]): Spread | null {
  const sorted = [...durations].sort((a, b) => a - b);
  const total = sorted.reduce((sum, d) => sum + d, 0);
  const n = sorted.length;
  if (n < 2 || total <= 0) return null;
  let weighted = 0;
  for (let index = 1; index < n; index += 1)
    weighted += index * (n - index) * ((sorted[index] ?? 0) - (sorted[index - 1] ?? 0));
  const gini = weighted / ((n - 1) * total);
  return { gini, p: uniformSumAtMost(gini * (n - 1), n - 1) };
}

/**
 * The same where durations are known within bounds only: the most that they may scatter, and so the largest `p`. Each pair of
 * them counts as far apart, and their total as small, as the bounds let it; with exact durations it is `exponentialSpread`.
 */
export function widestSpread(
  durations: readonly { readonly low: number; readonly high: number }[],
): Spread | null {
  const n = durations.length;
  const total = durations.reduce((sum, { low }) => sum + low, 0);
  if (n < 2 || durations.every(({ high }) => high <= 0)) return null;
  if (total <= 0) return { gini: 1, p: 1 };
  let apart = 0;
  for (const [index, a] of durations.entries())
    for (const b of durations.slice(index + 1)) apart += Math.max(a.high - b.low, b.high - a.low);
  const gini = Math.min(1, apart / ((n - 1) * total));
  return { gini, p: uniformSumAtMost(gini * (n - 1), n - 1) };
}

/**
 * Probability that `count` uniform variables sum to at most `sum`. The upper half is taken from the lower, where the
 * alternating series is exact enough for the counts of a log. Source: Irwin and Hall, Biometrika 19 (1927), from memory.
 */
export function uniformSumAtMost(sum: number, count: number): number {
  if (sum <= 0) return 0;
  if (sum >= count) return 1;
  if (sum > count / 2) return 1 - uniformSumAtMost(count - sum, count);
  let probability = 0;
  let choose = 1;
  for (let k = 0; k <= sum; k += 1) {
    probability += (k % 2 === 0 ? 1 : -1) * choose * power(sum - k, count);
    choose *= (count - k) / (k + 1);
  }
  return Math.max(0, probability);
}

/** `base^count / count!`, without a factorial that overflows. */
function power(base: number, count: number): number {
  let result = 1;
  for (let factor = 1; factor <= count; factor += 1) result *= base / factor;
  return result;
}
