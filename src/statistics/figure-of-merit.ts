/** How a figure of merit grows and decays; times in seconds. */
export interface Damping {
  readonly halfLifeSeconds: number;
  /** The figure never grows past it; `Infinity` for none. */
  readonly ceiling: number;
}

/** A figure decayed over some seconds: `figure * 2^(-seconds / half-life)`. Source: RFC 2439 (1998), section 4.3. */
export function decay(figure: number, seconds: number, { halfLifeSeconds }: Damping): number {
  return figure * 2 ** (-seconds / halfLifeSeconds);
}

/**
 * The figure of merit just after each flap: every flap adds 1 to what is left of the figure before. `flaps` are instants
 * in seconds, ascending; gives one figure per flap. Source: RFC 2439 (1998), section 4.3.
 */
export function figureOfMerit(flaps: readonly number[], damping: Damping): readonly number[] {
  const figures: number[] = [];
  let figure = 0;
  for (const [index, flap] of flaps.entries()) {
    const elapsed = index === 0 ? 0 : flap - (flaps[index - 1] ?? flap);
    figure = Math.min(damping.ceiling, decay(figure, elapsed, damping) + 1);
    figures.push(figure);
  }
  return figures;
}

/**
 * Seconds until a figure has decayed to the re-use value; 0 if it is there already.
 * Source: RFC 2439 (1998), section 4.3: half-life times log2(figure / re-use).
 */
export function secondsToReuse(figure: number, reuse: number, { halfLifeSeconds }: Damping): number {
  return figure <= reuse ? 0 : halfLifeSeconds * Math.log2(figure / reuse);
}
