import type { LayerSpec, UnitSpec } from 'vega-lite/types_unstable/spec/index.js';
import type { Chart } from './chart.ts';
import { dashes, ink, labelWidth, quiet } from './ink.ts';

/** How many halves said one value at one time, milliseconds UTC. */
export interface CensusRow {
  readonly time: number;
  readonly value: string;
  readonly halves: number;
  /** The value with its count, at the last time alone; else empty. */
  readonly label: string;
  /** The height at which it stands, in halves: beside its line, or as near as other labels let it. */
  readonly labelAt: number;
}

/** How many halves ran each firmware, or were each model, over calendar time. */
export const census: Chart<CensusRow> = {
  id: 'census',
  title: 'Halves by what they report',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 440,
    height: 130,
    config: quiet,
    encoding: {
      x: {
        field: 'time',
        type: 'temporal',
        scale: { type: 'utc', nice: false },
        axis: { title: null, grid: false, format: '%b %Y', tickCount: 6 },
      },
      y: halves('halves'),
    },
    layer: [
      ...[...new Set(rows.map((row) => row.value))].map(line),
      {
        transform: [{ filter: 'datum.label !== ""' }],
        mark: { type: 'text', align: 'left', dx: 8, baseline: 'middle', limit: labelWidth },
        encoding: { y: halves('labelAt'), text: { field: 'label', type: 'nominal' } },
      },
    ],
  }),
  describe: (rows) => {
    const last = rows.filter((row) => row.label !== '').map((row) => row.label);
    return last.length === 0 ? 'Nothing was reported.' : `Halves at the end: ${last.join(', ')}.`;
  },
};

function line(value: string, index: number): LayerSpec<string> | UnitSpec<string> {
  return {
    transform: [{ filter: { field: 'value', equal: value } }],
    mark: {
      type: 'line',
      color: ink,
      strokeWidth: index === 0 ? 2.2 : 1.5,
      strokeDash: [...(dashes[index % dashes.length] ?? [])],
      interpolate: 'step-after',
    },
  };
}

function halves(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: {
    readonly title: string;
    readonly grid: false;
    readonly tickMinStep: number;
    readonly tickCount: number;
  };
  readonly scale: { readonly zero: true };
} {
  return {
    field,
    type: 'quantitative',
    axis: { title: 'halves', grid: false, tickMinStep: 1, tickCount: 4 },
    scale: { zero: true },
  };
}
