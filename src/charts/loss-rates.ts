import type { Chart } from './chart.ts';
import { ink, quiet, rule, rust, secondInk } from './ink.ts';

/** Bouts of losses of one pair in a year of observed time, with their limits, and the rate of the whole fleet. */
export interface LossRateRow {
  readonly pair: string;
  readonly rate: number;
  readonly low: number;
  readonly high: number;
  readonly fleetRate: number;
  /** Said over the fleet's line, in the first row alone. */
  readonly fleetWord: string;
  /** What there is to say of the pair, right of its limits; empty for most. */
  readonly word: string;
  readonly standsOut: boolean;
}

/** The rate of each pair against the fleet's, in the order of the rows. */
export const lossRates: Chart<LossRateRow> = {
  id: 'loss-rates',
  title: 'Bouts of losses in a year of observed time',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 460,
    height: { step: 24 },
    config: quiet,
    encoding: {
      y: {
        field: 'pair',
        type: 'nominal',
        scale: { domain: rows.map((row) => row.pair) },
        axis: { title: null, domain: false, ticks: false, labelPadding: 8, labelLimit: 180, labelColor: ink },
      },
    },
    layer: [
      {
        mark: { type: 'rule', color: secondInk, strokeWidth: 1, strokeDash: [2, 2] },
        encoding: { x: perYear('fleetRate'), y: { value: 0 }, y2: { value: { expr: 'height' } } },
      },
      {
        mark: { type: 'text', align: 'left', baseline: 'bottom', dx: -2, dy: -4, color: secondInk },
        encoding: { x: perYear('fleetRate'), y: { value: 0 }, text: { field: 'fleetWord', type: 'nominal' } },
      },
      {
        mark: { type: 'rule', color: rule, strokeWidth: 9 },
        encoding: { x: perYear('low'), x2: { field: 'high' } },
      },
      {
        transform: [{ filter: '!datum.standsOut' }],
        mark: { type: 'tick', color: ink, thickness: 2, size: 14, opacity: 1 },
        encoding: { x: perYear('rate') },
      },
      {
        transform: [{ filter: 'datum.standsOut' }],
        mark: { type: 'tick', color: rust, thickness: 4, size: 18, opacity: 1 },
        encoding: { x: perYear('rate') },
      },
      {
        transform: [{ filter: 'datum.standsOut' }],
        mark: { type: 'text', align: 'left', dx: 8, baseline: 'middle', color: rust },
        encoding: { x: perYear('high'), text: { field: 'word', type: 'nominal' } },
      },
    ],
  }),
  describe: (rows) => {
    const worse = rows.filter((row) => row.standsOut).map((row) => row.pair);
    const pairs = rows.length === 1 ? 'One pair' : `${rows.length} pairs`;
    const said =
      worse.length === 0
        ? 'none stands out'
        : `${worse.join(', ')} ${worse.length === 1 ? 'stands' : 'stand'} out`;
    return rows[0] === undefined
      ? 'No pair was observed.'
      : `${pairs}, bouts of losses per year with 95 % limits against ${rows[0].fleetRate.toFixed(1)} of the whole fleet; ${said}.`;
  },
};

function perYear(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: { readonly title: string; readonly grid: false };
  readonly scale: { readonly zero: true };
} {
  return {
    field,
    type: 'quantitative',
    axis: { title: 'bouts per year, with 95 % limits', grid: false },
    scale: { zero: true },
  };
}
