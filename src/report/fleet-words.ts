import {
  type Estimate,
  type Fleet,
  type LossTrend,
  type PairReview,
  sayChance,
  sayDuration,
} from '../vocabulary.ts';

/** Whether losses come more and more often, with the chance by Laplace's test and the shape of a power law. */
export function sayTrend({ laplace, p, shape, comesCloser }: LossTrend): string {
  if (comesCloser === null) return 'not judged below 30 days';
  if (laplace === null || p === null) return 'no loss to judge by';
  const figures = `${sayChance(p)}${shape === null ? '' : `, shape ${shape.toFixed(1)}`}`;
  return comesCloser ? `more and more often (${figures})` : `no trend (${figures})`;
}

/** Bouts per year with limits; where too little was observed for that, what was seen: `1 loss in 1 h 45 min`. */
export function sayRate({
  ratePerYear,
  losses,
  observedSeconds,
}: Pick<PairReview, 'ratePerYear' | 'losses' | 'observedSeconds'>): string {
  if (ratePerYear === null) return saySeen(losses, observedSeconds);
  return sayEstimate(ratePerYear);
}

/** What was seen, where nothing can be said per year: `1 loss in 1 h 45 min`. */
export function saySeen(losses: number, observedSeconds: number): string {
  return `${sayLosses(losses)} in ${sayObserved(observedSeconds)}`;
}

/** `no loss`, `1 loss`, `5 losses`. */
export function sayLosses(losses: number): string {
  return losses === 1 ? '1 loss' : `${losses === 0 ? 'no' : losses} ${losses === 0 ? 'loss' : 'losses'}`;
}

/** A figure with its limits, to one decimal. */
export function sayEstimate({ value, low, high }: Estimate): string {
  if (value === null) return 'not enough data';
  if (low === null && high === null) return value.toFixed(1);
  return `${value.toFixed(1)} (${(low ?? 0).toFixed(1)} to ${high === null ? 'not known' : high.toFixed(1)})`;
}

const daySeconds = 86_400;

/** How long a pair was observed: in days, from one day on. */
export function sayObserved(seconds: number): string {
  return seconds < daySeconds ? sayDuration(seconds) : `${Math.round(seconds / daySeconds)} d`;
}

const mostNamed = 5;

/** Names in a sentence, the first of very many: `A`, `A and B`, `A, B and C`, `A, B, C, D, E and 7 more`. */
export function sayNames(names: readonly string[]): string {
  const left = names.length - mostNamed;
  const said = left > 0 ? [...names.slice(0, mostNamed), `${left} more`] : names;
  const [last = '', ...before] = said.toReversed();
  return before.length === 0 ? last : `${before.toReversed().join(', ')} and ${last}`;
}

/** A month by its first instant, UTC: `Mar 2026`. */
export function sayMonth(from: number): string {
  const date = new Date(from);
  const names = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  return `${names[date.getUTCMonth()]} ${date.getUTCFullYear()}`;
}

/** How much longer sync times get in a year, with limits. */
export function sayLonger({
  secondsPerYear: { value, low, high },
  p,
}: NonNullable<Fleet['groups'][number]['trend']>): string {
  const seconds = (s: number | null): string =>
    s === null ? 'not known' : s.toFixed(0).replace(/^-0$/, '0');
  return `${seconds(value)} s (${seconds(low)} to ${seconds(high)}), ${sayChance(p)}`;
}

/** Whether a pair is fit, said together with whether it stands out: the one is of today, the other of all its log. */
export function sayFit(
  { fit, reasons }: Pick<PairReview['readiness'], 'fit' | 'reasons'>,
  standsOut: boolean | null,
): string {
  if (fit === true)
    return standsOut === true
      ? 'ready for a swap today, but loses its partner more often than the rest'
      : 'ready for a swap';
  return `${fit === null ? 'not known whether ready for a swap' : 'not ready for a swap'}: ${reasons.join(' ')}`;
}
