import type { Chart } from './chart.ts';
import { ink, quiet, rule, rust, secondInk } from './ink.ts';

/** One bring-up, in seconds from its start. `null` where a thing was not seen. */
export interface BringUpRow {
  readonly name: string;
  /** Sync time, and its bounds. */
  readonly ready: number | null;
  readonly readyLow: number | null;
  readonly readyHigh: number | null;
  /** Stable light, and its bounds. */
  readonly steady: number | null;
  readonly steadyLow: number | null;
  readonly steadyHigh: number | null;
  /** How long it was watched without a steady light; `null` if that was seen. */
  readonly watched: number | null;
  /** The limit, in seconds, and its word. */
  readonly limit: number;
  readonly limitWord: string;
  /** `past the limit`, or nothing. */
  readonly late: string;
}

/** All bring-ups laid on one start, against the limit for the light. */
export const bringUps: Chart<BringUpRow> = {
  id: 'bring-ups',
  title: 'Bring-ups from their start, against the five-minute limit',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 480,
    height: { step: 44 },
    config: quiet,
    encoding: {
      y: {
        field: 'name',
        type: 'nominal',
        sort: null,
        axis: { title: null, domain: false, ticks: false, labelPadding: 8, labelLimit: 240, labelColor: ink },
      },
    },
    layer: [
      {
        mark: { type: 'rule', color: rule, strokeWidth: 9 },
        encoding: { x: seconds('readyLow'), x2: { field: 'readyHigh' } },
      },
      {
        mark: { type: 'rule', color: rule, strokeWidth: 9 },
        encoding: { x: seconds('steadyLow'), x2: { field: 'steadyHigh' } },
      },
      {
        mark: { type: 'rule', color: ink, strokeWidth: 1.3, strokeDash: [5, 3] },
        encoding: { x: seconds('ready'), x2: { datum: 0 } },
      },
      {
        mark: { type: 'rule', color: ink, strokeWidth: 1.3 },
        encoding: { x: seconds('ready'), x2: { field: 'steady' } },
      },
      {
        mark: { type: 'rule', color: rust, strokeWidth: 2.4 },
        encoding: { x: seconds('watched'), x2: { datum: 0 } },
      },
      { mark: { type: 'tick', color: ink, thickness: 1.6, size: 16 }, encoding: { x: seconds('ready') } },
      { mark: { type: 'tick', color: ink, thickness: 3, size: 20 }, encoding: { x: seconds('steady') } },
      {
        mark: { type: 'text', align: 'center', dy: -14, fontSize: 13 },
        encoding: { x: seconds('ready'), text: { value: 'ready' } },
      },
      {
        mark: { type: 'text', align: 'center', dy: -15, fontSize: 13 },
        encoding: { x: seconds('steady'), text: { value: 'steady' } },
      },
      {
        mark: { type: 'text', align: 'right', dy: -12, fontSize: 13, color: rust },
        encoding: { x: seconds('watched'), text: { field: 'late', type: 'nominal' } },
      },
      {
        mark: { type: 'rule', color: secondInk, strokeWidth: 1, strokeDash: [2, 2] },
        encoding: { x: seconds('limit'), y: { value: 0 }, y2: { value: { expr: 'height' } } },
      },
      {
        mark: { type: 'text', align: 'center', baseline: 'bottom', dy: -3, fontSize: 13 },
        encoding: { x: seconds('limit'), y: { value: 0 }, text: { field: 'limitWord', type: 'nominal' } },
      },
    ],
  }),
  describe: (rows) => {
    const late = rows.filter((r) => r.late !== '').length;
    const limit = rows[0]?.limit ?? 0;
    return `${rows.length === 1 ? 'One bring-up' : `${rows.length} bring-ups`} against the limit of ${limit} s for a steady light; past it: ${late === 0 ? 'none' : late}.`;
  },
};

function seconds(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: { readonly title: string; readonly grid: false };
  readonly scale: { readonly zero: true };
} {
  return {
    field,
    type: 'quantitative',
    axis: { title: 'seconds from the start', grid: false },
    scale: { zero: true },
  };
}
