import type { LayerSpec, UnitSpec } from 'vega-lite/types_unstable/spec/index.js';
import type { Chart } from './chart.ts';
import { dashes, ink, labelWidth, quiet, rule } from './ink.ts';

/** One step of the curve of one group: how many bouts a pair had on average by so many observed days in it. */
export interface MeanBoutsRow {
  readonly group: string;
  readonly pairs: number;
  readonly days: number;
  readonly mean: number;
  /** Limits; both the mean itself where none are told. */
  readonly low: number;
  readonly high: number;
  /** The group, at the end of its curve; else empty. */
  readonly label: string;
  /** The height at which it stands. */
  readonly labelAt: number;
}

/** The mean cumulative number of bouts of the groups. */
export const meanBouts: Chart<MeanBoutsRow> = {
  id: 'mean-bouts',
  title: 'Bouts of losses per pair, by observed days in the group',
  spec: (rows) => {
    const groups = [...new Set(rows.map((row) => row.group))];
    return {
      data: { values: rows.map((row) => ({ ...row })) },
      width: 480,
      height: 220,
      config: quiet,
      layer: [
        ...groups.map(band),
        ...groups.map(curve),
        {
          transform: [{ filter: 'datum.label !== ""' }],
          mark: { type: 'text', align: 'left', dx: 7, limit: labelWidth },
          encoding: { x: days(), y: bouts('labelAt'), text: { field: 'label', type: 'nominal' } },
        },
      ],
    };
  },
  describe: (rows) => {
    const last = [...new Map(rows.map((row) => [row.group, row])).values()];
    if (last.length === 0) return 'No group had a bout.';
    const said = last.map(
      ({ group, pairs, days: by, mean }) =>
        `${group} ${mean.toFixed(1)} by ${by.toFixed(0)} days (${pairs} ${pairs === 1 ? 'pair' : 'pairs'})`,
    );
    return `Mean number of bouts of a pair by observed days in its group, with 95 % limits: ${said.join('; ')}.`;
  },
};

type Layer = LayerSpec<string> | UnitSpec<string>;

function band(group: string): Layer {
  return {
    transform: [{ filter: { field: 'group', equal: group } }],
    mark: { type: 'area', color: rule, opacity: 0.45, interpolate: 'step-after' },
    encoding: { x: days(), y: bouts('low'), y2: { field: 'high' } },
  };
}

function curve(group: string, index: number): Layer {
  return {
    transform: [{ filter: { field: 'group', equal: group } }],
    mark: {
      type: 'line',
      color: ink,
      strokeWidth: index === 0 ? 2.2 : 1.5,
      strokeDash: [...(dashes[index % dashes.length] ?? [])],
      interpolate: 'step-after',
    },
    encoding: { x: days(), y: bouts('mean') },
  };
}

function days(): {
  readonly field: 'days';
  readonly type: 'quantitative';
  readonly axis: { readonly title: string; readonly grid: false };
} {
  return { field: 'days', type: 'quantitative', axis: { title: 'observed days in the group', grid: false } };
}

function bouts(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: { readonly title: string; readonly grid: false; readonly tickCount: number };
} {
  return {
    field,
    type: 'quantitative',
    axis: { title: 'bouts per pair', grid: false, tickCount: 5 },
  };
}
