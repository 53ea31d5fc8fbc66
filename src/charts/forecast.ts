import type { Chart } from './chart.ts';
import { ink, quiet, rule } from './ink.ts';

/** Hours of bring-up that so many swaps are expected to take, with the limits of a prediction. */
export interface ForecastRow {
  readonly swaps: number;
  readonly hours: number;
  readonly low: number;
  readonly high: number;
  /** Said of the last step alone. */
  readonly label: string;
  /** How many reflashes it was learnt from, and how many of them failed. */
  readonly learntFrom: number;
  readonly failed: number;
  /** How many of a hundred such predictions hold. */
  readonly percent: number;
}

/** How long the next swaps take, one more at each step. */
export const forecast: Chart<ForecastRow> = {
  id: 'forecast',
  title: 'Hours of bring-up of the next swaps',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 440,
    height: 170,
    config: quiet,
    encoding: {
      x: {
        field: 'swaps',
        type: 'quantitative',
        axis: { title: 'swaps, two modules each', grid: false, tickMinStep: 1 },
        scale: { zero: true },
      },
    },
    layer: [
      {
        mark: { type: 'area', color: rule, opacity: 0.6 },
        encoding: { y: hours('low'), y2: { field: 'high' } },
      },
      {
        mark: { type: 'line', color: ink, strokeWidth: 1.8, point: rows.length === 1 },
        encoding: { y: hours('hours') },
      },
      {
        transform: [{ filter: 'datum.label !== ""' }],
        mark: { type: 'text', align: 'left', dx: 8, baseline: 'middle' },
        encoding: { y: hours('hours'), text: { field: 'label', type: 'nominal' } },
      },
    ],
  }),
  describe: (rows) => {
    const last = rows.at(-1);
    if (last === undefined) return 'No reflash in the logs.';
    const { learntFrom, failed, swaps, label, percent } = last;
    return `From ${learntFrom} reflashes, ${failed === 0 ? 'none' : failed} of which failed: ${swaps === 1 ? 'one swap takes' : `${swaps} swaps take`} ${label} of bring-up (${percent} % prediction).`;
  },
};

function hours(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: { readonly title: string; readonly grid: false; readonly tickCount: number };
  readonly scale: { readonly zero: true };
} {
  return {
    field,
    type: 'quantitative',
    axis: { title: 'hours', grid: false, tickCount: 4 },
    scale: { zero: true },
  };
}
