import type { SiteModel } from './protocol.ts';

/** The newest stamp of a pair, and when its row came, by the clock here; `null` where nobody saw it come. */
export interface Arrival {
  readonly to: number;
  readonly arrivedAt: number | null;
}

/** By pair. */
export type Arrivals = ReadonlyMap<string, Arrival>;

/** Nothing was read yet. */
export const noArrivals: Arrivals = new Map();

/** How some files came to be read. All instants are milliseconds since 1970 on the clock here. */
export interface HowTheyCame {
  /** The same files as before, as they have become. */
  readonly isLive: boolean;
  readonly givenAt: number;
  /** When a file that is followed was written last; `null` where it is none of them. */
  modified(file: string): number | null;
}

/**
 * When the newest row of each pair came: with the files that were given just now where it is newer than what was read before and they
 * are live. Of a file that is followed from now on it came when that was written last, though not later than now: the clock of whoever
 * wrote it may be ahead.
 */
export function arrivalsAfter(
  before: Arrivals,
  { pairs, now }: Pick<SiteModel, 'pairs' | 'now'>,
  { isLive, givenAt, modified }: HowTheyCame,
): Arrivals {
  const written = (pair: string): number | null => {
    const clock = now.find((one) => one.pair === pair)?.clock;
    const at = clock === undefined ? null : modified(clock);
    return at === null ? null : Math.min(at, givenAt);
  };
  return new Map(
    pairs.map(({ health: { pair, to } }) => {
      const known = before.get(pair);
      if (known !== undefined && known.to === to) return [pair, known];
      const arrivedAt = isLive ? givenAt : written(pair);
      return [pair, { to, arrivedAt }];
    }),
  );
}
