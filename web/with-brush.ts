import type { TopLevelSpec } from 'vega-lite';

/** Room beside a chart's axis, in units: names to the left, a word that runs over the end to the right. */
const beside = { left: 92, right: 56 } as const;

/** A chart as wide as there is room, with its axis where that of every other such chart is. */
export function inLine(spec: TopLevelSpec, room: number, bottom: number): TopLevelSpec {
  if (!('layer' in spec)) return spec;
  const width = Math.max(280, room - beside.left - beside.right);
  return { ...spec, width, autosize: { type: 'none' }, padding: { ...beside, top: 6, bottom } };
}

/** Where on the time axis of such a chart a pointer is, as a share of its length; beyond 0 to 1 it is beside it. */
export function shareAlong(picture: Element, clientX: number): number {
  const { left, width } = picture.getBoundingClientRect();
  return (clientX - left - beside.left) / (width - beside.left - beside.right);
}

/** A layered chart on whose time axis a span can be marked: the selection `brush`. */
export function withBrush(spec: TopLevelSpec): TopLevelSpec {
  if (!('layer' in spec)) return spec;
  const [first, ...rest] = spec.layer;
  if (first === undefined || !('mark' in first)) return spec;
  const mark = { stroke: '#5b6168', fill: '#d9d5cb', fillOpacity: 0.4 };
  const params = [{ name: 'brush', select: { type: 'interval' as const, encodings: ['x' as const], mark } }];
  return { ...spec, layer: [{ ...first, params }, ...rest] };
}
