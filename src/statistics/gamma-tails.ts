/** The two parts of a distribution at a value, each with all its digits; together 1. */
export interface Tails {
  readonly below: number;
  readonly above: number;
}

/**
 * The chance that a gamma variable of scale 1 and a large `shape` (100 or more) lies below `value` (positive), and above it: the
 * series below the mean and the continued fraction above it, of which some times the root of the shape terms are taken. Source:
 * Press and others, Numerical Recipes (1992), section 6.2, formulae 6.2.5 and 6.2.7; what both are multiplied by is Loader's
 * saddle-point form, Fast and Accurate Computation of Binomial Probabilities (2000), both from memory.
 */
export function gammaTails(value: number, shape: number): Tails {
  const scale = poissonDensity(shape, value);
  if (value < shape + 1) {
    const below = Math.min(1, scale * lowerSeries(value, shape));
    return { below, above: 1 - below };
  }
  const above = Math.min(1, scale * shape * upperFraction(value, shape));
  return { below: 1 - above, above };
}

/** The value below which such a variable lies with `probability`, above 0 and below 1, found by halving. */
export function gammaQuantileOfLarge(probability: number, shape: number): number {
  const isPast = (value: number): boolean => {
    const { below, above } = gammaTails(value, shape);
    return probability <= 0.5 ? below >= probability : above <= 1 - probability;
  };
  const deviation = Math.sqrt(shape);
  let reach = 8 * deviation;
  while (isPast(Math.max(shape - reach, 1)) || !isPast(shape + reach)) reach *= 2;
  let [low, high] = [Math.max(shape - reach, 1), shape + reach];
  while (high - low > 1e-15 * high) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (isPast(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** `value ** shape * exp(-value) / gamma(shape + 1)`: what a Poisson count of that mean has at `shape`, a large one. */
function poissonDensity(shape: number, value: number): number {
  // Stirling's series: its next term is below 1e-17 from 100 on.
  const stirling =
    1 / (12 * shape) - 1 / (360 * shape ** 3) + 1 / (1260 * shape ** 5) - 1 / (1680 * shape ** 7);
  return Math.exp(-stirling - deviance(shape, value)) / Math.sqrt(2 * Math.PI * shape);
}

/** `shape ln(shape / value) + value - shape`, without the loss of digits where both are near each other. */
function deviance(shape: number, value: number): number {
  const difference = shape - value;
  if (Math.abs(difference) >= 0.1 * (shape + value)) return shape * Math.log(shape / value) - difference;
  const ratio = difference / (shape + value);
  let sum = difference * ratio;
  let term = 2 * shape * ratio;
  for (let odd = 3; ; odd += 2) {
    term *= ratio * ratio;
    const next = sum + term / odd;
    if (next === sum) return sum;
    sum = next;
  }
}

function lowerSeries(value: number, shape: number): number {
  let [sum, term] = [1, 1];
  for (let index = 1; term > sum * 1e-17; index += 1) {
    term *= value / (shape + index);
    sum += term;
  }
  return sum;
}

/** Lentz's method; no part of it is 0 above the mean. */
function upperFraction(value: number, shape: number): number {
  let b = value + 1 - shape;
  let c = Number.POSITIVE_INFINITY;
  let d = 1 / b;
  let fraction = d;
  for (let index = 1; ; index += 1) {
    const a = -index * (index - shape);
    b += 2;
    d = 1 / (a * d + b);
    c = b + a / c;
    const factor = c * d;
    fraction *= factor;
    if (Math.abs(factor - 1) < 1e-16) return fraction;
  }
}
