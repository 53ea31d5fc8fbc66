/**
 * How far apart the readings of a stream are: a histogram of bounded size, so that a long poll costs no memory, with its
 * median at hand.
 */
export interface Spacing {
  /** The spans that came, in milliseconds and in their order, and how many readings came after each. */
  readonly spans: number[];
  readonly readings: number[];
  /** The place of the median, how many readings lie before it, and how many there are. */
  middle: number;
  below: number;
  total: number;
  /** As it was added last, as it is counted, and how often since. */
  added: number;
  counted: number;
  run: number;
  /** Up to this a span is usual, as long as only spans as long as the last one are added: more may have to be looked at. */
  usualTo: number;
}

/** A span longer than so many medians is a silence. Source: design.md, section 2, Observed. */
export const mostSpacings = 3;

/** Nothing yet. */
export function noSpacing(): Spacing {
  return {
    spans: [],
    readings: [],
    middle: 0,
    below: 0,
    total: 0,
    added: Number.NaN,
    counted: -1,
    run: 0,
    usualTo: Number.NEGATIVE_INFINITY,
  };
}

/** Adds a span in milliseconds, of so many readings; most are as long as the one before. */
export function addSpan(spacing: Spacing, milliseconds: number, readings = 1): void {
  if (milliseconds === spacing.added) spacing.run += readings;
  else addOther(spacing, milliseconds, readings);
}

/** Median in milliseconds, to three significant digits; 0 without any. */
export function medianSpan(spacing: Spacing): number {
  flush(spacing);
  return spacing.spans[spacing.middle] ?? 0;
}

/** True for a span that is longer than three medians of those so far. */
export function isLongSpan(spacing: Spacing, milliseconds: number): boolean {
  if (milliseconds <= spacing.usualTo) return false;
  const median = medianSpan(spacing);
  const isLong = median > 0 && milliseconds > mostSpacings * median;
  // The median came near to it meanwhile.
  if (!isLong && milliseconds === spacing.added) spacing.usualTo = milliseconds;
  return isLong;
}

function addOther(spacing: Spacing, milliseconds: number, readings: number): void {
  if (milliseconds <= 0) return;
  // Those added so far were as long as the last one, not as this one.
  flush(spacing);
  const rounded = milliseconds < 1000 ? milliseconds : toThreeDigits(milliseconds);
  // While spans of one length are added the median comes nearer to them: one that is usual at first remains so.
  spacing.usualTo = isLongSpan(spacing, milliseconds) ? Number.NEGATIVE_INFINITY : milliseconds;
  spacing.added = milliseconds;
  spacing.counted = rounded;
  spacing.run += readings;
}

function flush(spacing: Spacing): void {
  const { spans, readings, counted, run } = spacing;
  if (run === 0) return;
  const place = placeOf(spans, counted);
  if (spans[place] !== counted) {
    spans.splice(place, 0, counted);
    readings.splice(place, 0, 0);
    if (place <= spacing.middle && spans.length > 1) spacing.middle += 1;
  }
  readings[place] = (readings[place] ?? 0) + run;
  spacing.total += run;
  if (place < spacing.middle) spacing.below += run;
  spacing.run = 0;
  moveMiddle(spacing);
}

/** The median is the shortest span at which half of all readings are reached. */
function moveMiddle(spacing: Spacing): void {
  const { readings, total } = spacing;
  while ((spacing.below + (readings[spacing.middle] ?? 0)) * 2 < total) {
    spacing.below += readings[spacing.middle] ?? 0;
    spacing.middle += 1;
  }
  while (spacing.below * 2 >= total) {
    spacing.middle -= 1;
    spacing.below -= readings[spacing.middle] ?? 0;
  }
}

/** Where a span stands, or would stand, among those in their order. */
function placeOf(spans: readonly number[], span: number): number {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((spans[middle] ?? 0) < span) low = middle + 1;
    else high = middle;
  }
  return low;
}

function toThreeDigits(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Math.round(value / step) * step;
}
