import { medianOffset } from '../statistics/median-offset.ts';
import type { Gauge, PairTimeline } from '../vocabulary.ts';

/** Width of a gauge's bin, in milliseconds. Source: design.md, section 2, Gauges. */
const binMs = 300_000;

/** Median of the five-minute means of a gauge of a half over a span; `null` if it was not read then. */
export function gaugeMedian(
  timeline: PairTimeline,
  half: string,
  gauge: Gauge,
  from: number,
  to: number,
): number | null {
  const bins = timeline.gauges
    .filter((g) => g.half === half && g.gauge === gauge)
    .flatMap((g) => g.bins)
    .filter((bin) => bin.from + binMs > from && bin.from <= to);
  return medianOffset(bins.map((bin) => bin.mean))?.median ?? null;
}
