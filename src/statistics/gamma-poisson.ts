import { type Counted, together } from './rate-ratio.ts';

/** Rates of several units, each drawn towards those of all. */
export interface GammaPoisson {
  /** Shape and rate of the gamma distribution of the true rates; `null` where the counts vary no more than by chance. */
  readonly prior: { readonly shape: number; readonly rate: number } | null;
  /** Mean of the true rate of each unit given its count, in the order given. */
  readonly shrunken: readonly number[];
}

/**
 * Counts whose true rates follow a gamma distribution (empirical Bayes): shape and rate by marginal maximum likelihood, and
 * for each unit `(shape + count) / (rate + exposure)`. Where the counts vary no more than Poisson counts of one rate, all
 * get that one. `null` without an event or without exposure. Source: Gaver and O'Muircheartaigh, Robust Empirical Bayes
 * Analyses of Event Rates, Technometrics 29 (1987), sections 1 and 2 (from memory).
 */
export function gammaPoisson(units: readonly Counted[]): GammaPoisson | null {
  const { count, exposure } = together(units);
  if (count === 0 || !(exposure > 0)) return null;
  const mean = count / exposure;
  // The slope of the likelihood where the spread of the rates is none.
  const excess = units.reduce((sum, u) => sum + (u.count - mean * u.exposure) ** 2 - u.count, 0);
  if (excess <= 0) return { prior: null, shrunken: units.map(() => mean) };
  const shape = Math.exp(
    highest((log) => likelihood(units, Math.exp(log), rateFor(units, Math.exp(log))), logShapes),
  );
  const rate = rateFor(units, shape);
  return {
    prior: { shape, rate },
    shrunken: units.map((u) => (shape + u.count) / (rate + u.exposure)),
  };
}

const logShapes = { from: Math.log(1e-4), to: Math.log(1e7) };

/** The likeliest rate for a shape: where `shape / rate` is the mean of the shrunken rates. */
function rateFor(units: readonly Counted[], shape: number): number {
  const tooLow = (rate: number): boolean => {
    let sum = 0;
    for (const { count, exposure } of units) sum += ((shape + count) * rate) / (rate + exposure);
    return sum < units.length * shape;
  };
  let low = shape;
  while (!tooLow(low)) low /= 4;
  let high = low;
  while (tooLow(high)) high *= 4;
  while (high / low > 1 + 1e-12) {
    const middle = Math.sqrt(low * high);
    if (tooLow(middle)) low = middle;
    else high = middle;
  }
  return high;
}

/** Logarithm of the marginal likelihood, but for what depends on no parameter. */
function likelihood(units: readonly Counted[], shape: number, rate: number): number {
  return units.reduce((sum, { count, exposure }) => {
    let own = shape * Math.log(rate / (rate + exposure)) - count * Math.log(rate + exposure);
    for (let k = 0; k < count; k += 1) own += Math.log(shape + k);
    return sum + own;
  }, 0);
}

/** Where a function of one summit is highest, by golden section. */
function highest(of: (x: number) => number, within: { readonly from: number; readonly to: number }): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let { from, to } = within;
  let [left, right] = [to - golden * (to - from), from + golden * (to - from)];
  let [atLeft, atRight] = [of(left), of(right)];
  while (to - from > 1e-7) {
    if (atLeft >= atRight) {
      [to, right, atRight] = [right, left, atLeft];
      left = to - golden * (to - from);
      atLeft = of(left);
    } else {
      [from, left, atLeft] = [left, right, atRight];
      right = from + golden * (to - from);
      atRight = of(right);
    }
  }
  return (from + to) / 2;
}
