import type { LayerSpec, UnitSpec } from 'vega-lite/types_unstable/spec/index.js';
import type { Chart } from './chart.ts';
import { ink, quiet, rule, rust, secondInk } from './ink.ts';

/** One bring-up, in seconds from its start. `null` where a thing was not seen. */
export interface BringUpRow {
  /** Told apart from all others: rows of one name would lie on one line. */
  readonly name: string;
  /** Sync time, its bounds and its word. */
  readonly ready: number | null;
  readonly readyLow: number | null;
  readonly readyHigh: number | null;
  readonly readyWord: string;
  /** Stable light, its bounds and its word. */
  readonly steady: number | null;
  readonly steadyLow: number | null;
  readonly steadyHigh: number | null;
  readonly steadyWord: string;
  /** Where the stretch without a ready partner ends, and where the line does. */
  readonly notReadyTo: number | null;
  readonly end: number | null;
  /** Where the line becomes late; `null` if it certainly is not past the limit. */
  readonly lateFrom: number | null;
  /** The limit for the light, in seconds, and its word. */
  readonly limit: number;
  readonly limitWord: string;
  readonly outcome: 'within' | 'exceeded' | 'inconclusive' | 'not-observed';
  /** What there is to say of it, beside the line; empty if the light was steady in time. */
  readonly outcomeWord: string;
}

type Layer = LayerSpec<string> | UnitSpec<string>;

/** All bring-ups laid on one start, against the limit for the light. */
export const bringUps: Chart<BringUpRow> = {
  id: 'bring-ups',
  title: 'Bring-ups from their start, against the limit for a steady light',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 400,
    height: { step: 44 },
    config: quiet,
    encoding: {
      y: {
        field: 'name',
        type: 'nominal',
        // In the order of the rows: each layer leaves out others, and would order the rest by itself.
        scale: { domain: rows.map((row) => row.name) },
        axis: { title: null, domain: false, ticks: false, labelPadding: 8, labelLimit: 240, labelColor: ink },
      },
    },
    layer: [
      ...bounds,
      ...lines,
      ...limit,
      ...marks,
      said(ink, 'datum.lateFrom === null'),
      said(rust, 'datum.lateFrom !== null'),
    ],
  }),
  describe: (rows) => {
    const first = rows[0];
    if (first === undefined) return 'No bring-up.';
    const count = (outcome: BringUpRow['outcome']): string => {
      const some = rows.filter((r) => r.outcome === outcome).length;
      return some === 0 ? 'none' : `${some}`;
    };
    const total = rows.length === 1 ? 'One bring-up' : `${rows.length} bring-ups`;
    return `${total} against the limit of ${first.limit} s for a steady light; within it: ${count('within')}; past it: ${count('exceeded')}; inconclusive: ${count('inconclusive')}; light not observed: ${count('not-observed')}.`;
  },
};

const bounds: readonly Layer[] = [
  ['readyLow', 'readyHigh'],
  ['steadyLow', 'steadyHigh'],
].map(([low = '', high = '']) => ({
  mark: { type: 'rule', color: rule, strokeWidth: 9 },
  encoding: { x: seconds(low), x2: { field: high } },
}));

const lines: readonly Layer[] = [
  {
    mark: { type: 'rule', color: ink, strokeWidth: 1.3, strokeDash: [5, 3] },
    encoding: { x: seconds('notReadyTo'), x2: { datum: 0 } },
  },
  {
    mark: { type: 'rule', color: ink, strokeWidth: 1.3 },
    encoding: { x: seconds('notReadyTo'), x2: { field: 'end' } },
  },
  {
    mark: { type: 'rule', color: rust, strokeWidth: 2.4 },
    encoding: { x: seconds('lateFrom'), x2: { field: 'end' } },
  },
];

const limit: readonly Layer[] = [
  {
    mark: { type: 'rule', color: secondInk, strokeWidth: 1, strokeDash: [2, 2] },
    encoding: { x: seconds('limit'), y: { value: 0 }, y2: { value: { expr: 'height' } } },
  },
  {
    mark: { type: 'text', align: 'center', baseline: 'bottom', dy: -3 },
    encoding: { x: seconds('limit'), y: { value: 0 }, text: { field: 'limitWord', type: 'nominal' } },
  },
];

const marks: readonly Layer[] = [
  { mark: { type: 'tick', color: ink, thickness: 1.6, size: 16 }, encoding: { x: seconds('ready') } },
  { mark: { type: 'tick', color: ink, thickness: 3, size: 20 }, encoding: { x: seconds('steady') } },
  ...named('ready', 'readyWord'),
  ...named('steady', 'steadyWord'),
];

/** A word over its mark, on the side away from the limit, whose line would strike it through. */
function named(field: string, word: string): readonly Layer[] {
  const text = { field: word, type: 'nominal' } as const;
  const encoding = { x: seconds(field), text };
  return [
    {
      transform: [{ filter: `datum.${field} !== null && datum.${field} <= datum.limit` }],
      mark: { type: 'text', align: 'right', dx: 2, dy: -15 },
      encoding,
    },
    {
      transform: [{ filter: `datum.${field} > datum.limit` }],
      mark: { type: 'text', align: 'left', dx: -2, dy: -15 },
      encoding,
    },
  ];
}

/** The outcome, right of all lines: nothing is ever in its way there. */
function said(color: string, filter: string): Layer {
  return {
    transform: [{ filter }],
    mark: { type: 'text', align: 'left', dx: 10, baseline: 'middle', color },
    encoding: { x: { value: { expr: 'width' } }, text: { field: 'outcomeWord', type: 'nominal' } },
  };
}

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
