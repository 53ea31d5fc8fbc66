import type { Chart } from './chart.ts';
import { ink, quiet, secondInk } from './ink.ts';

/** One month of one pair. `from` and `to` are milliseconds UTC. */
export interface MonthRow {
  readonly pair: string;
  readonly from: number;
  readonly to: number;
  /** The middle of the month, where its strokes stand. */
  readonly at: number;
  /** Bouts that began in it, which are drawn; and all its losses. */
  readonly bouts: number;
  readonly losses: number;
  /** The pair, in its first month alone: it stands left of its line. */
  readonly label: string;
  /** False where the pair was not observed at all: no line is drawn there. */
  readonly isObserved: boolean;
}

/** The bouts of losses of each pair in each month, a row for each pair in the order of the rows. */
export const lossesOverTime: Chart<MonthRow> = {
  id: 'losses-over-time',
  title: 'Bouts of losses in each month',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    config: quiet,
    // Less, and the 0 of one scale covers the highest figure of the next.
    spacing: 14,
    facet: {
      row: {
        field: 'pair',
        type: 'nominal',
        title: null,
        sort: [...new Set(rows.map((row) => row.pair))],
        // The name stands at its line as a text: a header would be set by the estimated width of all.
        header: null,
      },
    },
    spec: {
      width: 480,
      height: 40,
      layer: [
        {
          transform: [{ filter: 'datum.label !== ""' }],
          mark: { type: 'text', align: 'right', baseline: 'middle', limit: 150 },
          encoding: { x: { value: -10 }, y: { value: 20 }, text: { field: 'label', type: 'nominal' } },
        },
        {
          transform: [{ filter: 'datum.isObserved' }],
          mark: { type: 'rule', color: secondInk, strokeWidth: 1 },
          encoding: { x: month('from'), x2: { field: 'to' }, y: { datum: 0 } },
        },
        {
          transform: [{ filter: 'datum.bouts > 0' }],
          mark: { type: 'rule', color: ink, strokeWidth: 5 },
          encoding: {
            x: month('at'),
            y: {
              field: 'bouts',
              type: 'quantitative',
              axis: { title: null, orient: 'right', grid: false, tickMinStep: 1, tickCount: 2 },
            },
            y2: { datum: 0 },
          },
        },
      ],
    },
  }),
  describe: (rows) => {
    const pairs = [...new Set(rows.map((row) => row.pair))];
    if (pairs.length === 0) return 'No month was observed.';
    const said = pairs.map((pair) => {
      const own = rows.filter((row) => row.pair === pair);
      const sumOf = (count: (row: MonthRow) => number): number =>
        own.reduce((sum, row) => sum + count(row), 0);
      const [bouts, losses] = [sumOf((row) => row.bouts), sumOf((row) => row.losses)];
      const all = losses === bouts ? '' : ` (${losses} losses)`;
      return `${pair} ${bouts}${all} in ${own.length === 1 ? 'one month' : `${own.length} months`}`;
    });
    return `Bouts of losses in each month: ${said.join(', ')}.`;
  },
};

function month(field: string): {
  readonly field: string;
  readonly type: 'temporal';
  readonly scale: { readonly type: 'utc'; readonly nice: false };
  readonly axis: {
    readonly title: null;
    readonly grid: false;
    readonly format: string;
    readonly tickCount: number;
  };
} {
  return {
    field,
    type: 'temporal',
    scale: { type: 'utc', nice: false },
    axis: { title: null, grid: false, format: '%b %Y', tickCount: 6 },
  };
}
