import type { TopLevelSpec } from 'vega-lite';

/** The narrowest that a chart can be read at, and the room between two side by side, in pixels. */
const [leastChart, betweenCharts] = [400, 32] as const;

/** How wide each of several charts is in so much room: two side by side where they fit. */
export function chartWidth(room: number, count: number): number {
  const half = Math.floor((room - betweenCharts) / 2);
  return count > 1 && half >= leastChart ? half : room;
}

/** Room that a facet's names take beside its lines: they are texts of the chart, which its width does not hold. */
const besideFacet = 190;
/** A chart gains nothing from being wider. */
const mostChart = 760;

/** A chart of the width given, axes and names included; of other kinds than the reports hold, as it is. */
export function fitted(spec: TopLevelSpec, width: number): TopLevelSpec {
  const own = Math.min(width, mostChart);
  if ('layer' in spec) return { ...spec, width: own, autosize: { type: 'fit-x', contains: 'padding' } };
  if ('facet' in spec && 'layer' in spec.spec)
    return { ...spec, spec: { ...spec.spec, width: Math.max(120, own - besideFacet) } };
  return spec;
}
