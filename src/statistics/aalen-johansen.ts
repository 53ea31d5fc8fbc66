import { betaAtMost, betaQuantileAt } from './distributions.ts';
import { firstThatHolds } from './first-that-holds.ts';

/**
 * How long something was watched, in seconds, and why no longer: it ended, something else came first after which it cannot end any
 * more (competing), or the watch ended (censored), which says nothing of what would have come.
 */
export interface Watched {
  readonly seconds: number;
  readonly end: 'ended' | 'competing' | 'censored';
}

/** The two shapes of a beta distribution. */
type Shapes = readonly [number, number];

/** What is known just after `seconds`: the share not ended, and where that may lie. `null`: surely 1, and surely from 0 on. */
export interface IncidenceStep {
  readonly seconds: number;
  /** True if something ended just then. */
  readonly isEnd: boolean;
  readonly surviving: number;
  readonly lower: Shapes | null;
  readonly upper: Shapes | null;
}

/** A product of beta variables by its first moments: the logarithms of its mean and of 1 and its squared relative deviation. */
interface Product {
  readonly logMean: number;
  readonly logSpread: number;
}

const one: Product = { logMean: 0, logSpread: 0 };

/**
 * The share not ended after each time, ascending, the first before any; 1 less the cumulative incidence. What met a competing
 * end counts as not ended ever after: as censored it would count as if it were to end like the rest. Without competing ends it
 * is the estimate of Kaplan and Meier, without censored times the plain share.
 *
 * Each end weighs one over those still to be judged: all, less at every censoring the share that was censored of those
 * watched. Limits (`bandOf`, `incidenceQuantile`): of `Y` still to be judged and not ended an end leaves a share that is beta
 * (Y, 1), and their product is taken for beta by its mean and variance; below, one more of those left may end at once. Without
 * censored times they are exact, Clopper and Pearson's; they hold from one time on, no matter what the distribution.
 * Sources: Aalen and Johansen, Scandinavian Journal of Statistics 5 (1978); Satten and Datta, The American Statistician 55
 * (2001), for the weights; Fay, Brittain and Proschan, Biostatistics 14 (2013), for the product of betas; Geskus, Biometrics 67
 * (2011), for `Y` with competing ends (all from memory).
 */
export function aalenJohansen(times: readonly Watched[]): readonly IncidenceStep[] {
  const sorted = [...times].sort((a, b) => a.seconds - b.seconds);
  let [watched, judged, incidence] = [sorted.length, sorted.length, 0];
  let ends = one;
  const steps = [stepOf(0, false, 1, one, judged)];
  for (let index = 0; index < sorted.length; ) {
    const seconds = sorted[index]?.seconds ?? 0;
    const counts = { ended: 0, competing: 0, censored: 0 };
    for (let next = sorted[index]; next?.seconds === seconds; next = sorted[index]) {
      counts[next.end] += 1;
      index += 1;
    }
    for (let count = 0; count < counts.ended; count += 1) {
      ends = timesBeta(ends, judged * (1 - incidence));
      incidence += 1 / judged;
    }
    watched -= counts.ended + counts.competing;
    if (counts.censored > 0) judged *= (watched - counts.censored) / watched;
    watched -= counts.censored;
    const surviving = 1 - incidence < rounding ? 0 : 1 - incidence;
    steps.push(stepOf(seconds, counts.ended > 0, surviving, ends, judged * surviving));
  }
  return steps;
}

const rounding = 1e-12;

/** A product times a beta variable of the shapes `first` and 1. */
function timesBeta({ logMean, logSpread }: Product, first: number): Product {
  return {
    logMean: logMean - Math.log1p(1 / first),
    logSpread: logSpread + Math.log1p(1 / (first * (first + 2))),
  };
}

function stepOf(
  seconds: number,
  isEnd: boolean,
  surviving: number,
  ends: Product,
  left: number,
): IncidenceStep {
  return {
    seconds,
    isEnd,
    surviving,
    lower: left <= 0 ? null : shapesOf(timesBeta(ends, left)),
    upper: ends === one ? null : shapesOf(ends),
  };
}

/** The beta distribution of the same mean and variance. */
function shapesOf({ logMean, logSpread }: Product): Shapes {
  const first = -Math.expm1(logMean + logSpread) / Math.expm1(logSpread);
  return [first, (first * -Math.expm1(logMean)) / Math.exp(logMean)];
}

/** The limits of the share not ended at a step, pointwise; `confidence` as 0.95. */
export function bandOf(
  { lower, upper }: IncidenceStep,
  confidence = 0.95,
): { readonly low: number; readonly high: number } {
  const tail = (1 - confidence) / 2;
  return {
    low: lower === null ? 0 : betaQuantileAt(tail, ...lower),
    high: upper === null ? 1 : betaQuantileAt(1 - tail, ...upper),
  };
}

/**
 * The time by which `share` (0.5 for the median) of all have ended, and its limits: the first step at which the curve, the
 * lower and the upper edge of its band are down to `1 - share`. `null` where they do not get there; no lower limit either where
 * the band is there before anything was watched. Source: Brookmeyer and Crowley, Biometrics 38 (1982), from memory.
 */
export function incidenceQuantile(
  steps: readonly IncidenceStep[],
  share: number,
  confidence = 0.95,
): { readonly value: number | null; readonly low: number | null; readonly high: number | null } {
  const [tail, left] = [(1 - confidence) / 2, 1 - share];
  const below = (shapes: Shapes | null, surely: number): number =>
    shapes === null ? surely : betaAtMost(left, ...shapes);
  const low = firstThatHolds(steps, ({ lower }) => below(lower, 1) >= tail);
  const value = firstThatHolds(steps, ({ surviving }) => surviving <= left + rounding);
  const high = firstThatHolds(steps, ({ upper }) => below(upper, 0) >= 1 - tail);
  const timeAt = (index: number): number | null => (index === 0 ? null : (steps[index]?.seconds ?? null));
  return { value: timeAt(value), low: timeAt(low), high: timeAt(high) };
}
