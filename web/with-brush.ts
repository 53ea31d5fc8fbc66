import type { TopLevelSpec } from 'vega-lite';

/** A layered chart as wide as there is room, on whose time axis a span can be marked: the selection `brush`. */
export function withBrush(spec: TopLevelSpec, width: number): TopLevelSpec {
  if (!('layer' in spec)) return spec;
  const [first, ...rest] = spec.layer;
  if (first === undefined || !('mark' in first)) return spec;
  const mark = { stroke: '#5b6168', fill: '#d9d5cb', fillOpacity: 0.4 };
  const brush = { name: 'brush', select: { type: 'interval', encodings: ['x'], mark } } as const;
  return {
    ...spec,
    width,
    layer: [{ ...first, params: [{ ...brush, select: { ...brush.select, encodings: ['x'] } }] }, ...rest],
  };
}
