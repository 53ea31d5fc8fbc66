import { type Estimate, type Fleet, type LossTrend, sayChance, sayDuration } from '../vocabulary.ts';

/** Whether losses come ever closer, with the chance by Laplace's test and the shape of a power law. */
export function sayTrend({ laplace, p, shape, comesCloser }: LossTrend): string {
  if (laplace === null || p === null) return 'no loss to judge by';
  const figures = `${sayChance(p)}${shape === null ? '' : `, shape ${shape.toFixed(1)}`}`;
  return comesCloser ? `ever closer (${figures})` : `none for sure (${figures})`;
}

/** A rate with its limits. */
export function sayRate({ value, low, high }: Estimate): string {
  if (value === null) return 'not enough data';
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
