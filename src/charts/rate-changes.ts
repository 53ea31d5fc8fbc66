import type { Chart } from './chart.ts';
import { ink, quiet, rust, secondInk } from './ink.ts';

/** How many bouts one pair, or all pairs of a group, had had by an instant (milliseconds UTC), and the two rates fitted. */
export interface RateChangeRow {
  readonly name: string;
  readonly time: number;
  readonly bouts: number;
  /** Where the line of the two rates bends; `null` but in its three rows. */
  readonly fitted: number | null;
  /** Said at the change, in its row alone. */
  readonly word: string;
  /** The change is one to the worse. */
  readonly isRise: boolean;
}

/** Bouts counted up over calendar time, with the one change of their rate. */
export const rateChanges: Chart<RateChangeRow> = {
  id: 'rate-changes',
  title: 'Cumulative bouts, and where their rate changed',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 480,
    height: 160,
    config: quiet,
    encoding: {
      x: {
        field: 'time',
        type: 'temporal',
        scale: { type: 'utc', nice: false },
        axis: { title: null, grid: false, format: '%b %Y', tickCount: 6 },
      },
    },
    layer: [
      {
        transform: [{ filter: 'datum.fitted !== null' }],
        mark: { type: 'line', color: secondInk, strokeWidth: 1, strokeDash: [7, 3] },
        encoding: { y: counted('fitted') },
      },
      {
        transform: [{ filter: 'datum.fitted === null' }],
        mark: { type: 'line', color: ink, strokeWidth: 1.8, interpolate: 'step-after' },
        encoding: { y: counted('bouts') },
      },
      {
        transform: [{ filter: 'datum.word !== ""' }],
        mark: { type: 'rule', color: rows.some((row) => row.isRise) ? rust : secondInk, strokeWidth: 1.5 },
        encoding: { y: { value: 0 }, y2: { value: { expr: 'height' } } },
      },
      {
        transform: [{ filter: 'datum.word !== ""' }],
        mark: {
          type: 'text',
          align: 'right',
          baseline: 'top',
          dx: -6,
          color: rows.some((row) => row.isRise) ? rust : secondInk,
        },
        encoding: { y: { value: 0 }, text: { field: 'word', type: 'nominal' } },
      },
    ],
  }),
  describe: (rows) => {
    const last = rows.at(-1);
    const change = rows.find((row) => row.word !== '');
    if (last === undefined || change === undefined) return 'No rate changed.';
    return `${last.name}: ${last.bouts === 1 ? 'one bout' : `${last.bouts} bouts`} in total; ${change.word}.`;
  },
};

function counted(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: {
    readonly title: string;
    readonly grid: false;
    readonly tickCount: number;
    readonly tickMinStep: number;
  };
} {
  return {
    field,
    type: 'quantitative',
    axis: { title: 'bouts', grid: false, tickCount: 5, tickMinStep: 1 },
  };
}
