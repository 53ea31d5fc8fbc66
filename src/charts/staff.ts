import type { LayerSpec, UnitSpec } from 'vega-lite/types_unstable/spec/index.js';
import type { Chart } from './chart.ts';
import { ink, ochre, quiet, rule, rust, secondInk } from './ink.ts';

/**
 * One mark of the staff. `x` and `x2` are milliseconds of the report's clock, as if it were UTC; `y` and `y2` are heights
 * above the lower line, with the two lines at 0 and 1. A happening's `text` stands on its tick or crossing, whether or not its
 * word has room in the picture. The one row `axis` lies under all others, from the begin to the end of what is shown.
 */
export interface StaffRow {
  readonly mark:
    | 'active'
    | 'ready'
    | 'not-ready'
    | 'unknown'
    | 'hatch'
    | 'steady'
    | 'flash'
    | 'tick'
    | 'bracket'
    | 'late'
    | 'flag'
    | 'to-flag'
    | 'leader'
    | 'band'
    | 'name'
    | 'word'
    | 'axis'
    | 'critical'
    | 'warning'
    | 'unobserved'
    | 'critical-word'
    | 'warning-word'
    | 'unobserved-word';
  readonly x: number;
  readonly x2: number;
  readonly y: number;
  readonly y2: number;
  readonly text: string;
}

const rules: readonly {
  readonly mark: StaffRow['mark'];
  readonly color: string;
  readonly width: number;
  readonly dash?: readonly number[];
}[] = [
  { mark: 'hatch', color: secondInk, width: 0.6 },
  { mark: 'leader', color: secondInk, width: 0.6 },
  { mark: 'unknown', color: secondInk, width: 1, dash: [1, 3] },
  { mark: 'not-ready', color: ink, width: 1.3, dash: [5, 3] },
  { mark: 'ready', color: ink, width: 1.3 },
  { mark: 'active', color: ink, width: 4 },
  { mark: 'steady', color: ink, width: 0.7 },
  { mark: 'flash', color: ink, width: 0.8 },
  { mark: 'tick', color: ink, width: 1.3 },
  { mark: 'bracket', color: secondInk, width: 1.2 },
  { mark: 'late', color: rust, width: 2.4 },
  { mark: 'flag', color: ink, width: 1.2 },
  { mark: 'to-flag', color: secondInk, width: 1, dash: [1, 3] },
  { mark: 'critical', color: rust, width: 6 },
  { mark: 'warning', color: ochre, width: 4 },
  { mark: 'unobserved', color: secondInk, width: 4, dash: [1, 2] },
  { mark: 'axis', color: secondInk, width: 1 },
];

/** What the upper line and its marks take. */
const leastTop = 1.3;
/** A letter of the highest word. */
const letterHeight = 0.13;
const unitsBetweenLines = 52;

/** A pair as a staff of two lines, one for each half, time to the right. */
export const staff: Chart<StaffRow> = {
  id: 'staff',
  title: 'The staff of the pair',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 660,
    height: Math.round((topOf(rows) - lowestOf(rows)) * unitsBetweenLines),
    config: quiet,
    encoding: {
      x: {
        field: 'x',
        type: 'temporal',
        scale: { type: 'utc', nice: false },
        axis: { format: clock, title: null, grid: false, tickCount: 8, domain: false },
      },
      y: {
        field: 'y',
        type: 'quantitative',
        scale: { domain: [lowestOf(rows), topOf(rows)], zero: false, nice: false },
        axis: null,
      },
    },
    layer: [
      band(),
      ...rules.map(ruled),
      named('name', 'right', -6, ink),
      named('word', 'left', 3, ink),
      named('critical-word', 'left', 0, rust),
      named('warning-word', 'left', 0, ochre),
      named('unobserved-word', 'left', 0, secondInk),
    ],
  }),
  describe: (rows) => {
    const halves = rows.filter((r) => r.mark === 'name').map((r) => r.text);
    const told = rows.filter((r) => happened.has(r.mark) && r.text !== '').sort((a, b) => a.x - b.x);
    const states = rows.filter((r) => r.mark.endsWith('-word')).map((r) => r.text);
    const words = [...told.map((r) => r.text), ...states].join(', ') || 'nothing';
    if (halves.length === 0) return `An empty staff. Marked on it: ${words}.`;
    return `The staff of ${halves.join(' and ')}, from the left. Marked on it: ${words}.`;
  },
};

/** Over the highest word. */
function topOf(rows: readonly StaffRow[]): number {
  const words = rows.filter((r) => r.mark === 'word').map((r) => r.y + letterHeight);
  return Math.max(leastTop, ...words);
}

/** Where the time axis is. */
function lowestOf(rows: readonly StaffRow[]): number {
  return rows.find((r) => r.mark === 'axis')?.y ?? -1.55;
}

/** What tells the ticks of the axis apart: the clock within a day, the day where one begins, the month where one begins. */
const clock = {
  year: '%b %Y',
  quarter: '%b %Y',
  month: '%b %Y',
  week: '%-d %b',
  date: '%-d %b',
  hours: '%H:%M',
  minutes: '%H:%M',
  seconds: '%H:%M:%S',
  milliseconds: '%H:%M:%S',
} as const;

const happened: ReadonlySet<StaffRow['mark']> = new Set(['tick', 'active']);

const span = { x2: { field: 'x2' }, y2: { field: 'y2' } } as const;

type Layer = LayerSpec<string> | UnitSpec<string>;

function only(mark: string): { readonly filter: { readonly field: 'mark'; readonly equal: string } }[] {
  return [{ filter: { field: 'mark', equal: mark } }];
}

function band(): Layer {
  return { transform: only('band'), mark: { type: 'rect', color: rule, opacity: 0.6 }, encoding: span };
}

function ruled({ mark, color, width, dash }: (typeof rules)[number]): Layer {
  return {
    transform: only(mark),
    mark: {
      type: 'rule',
      color,
      strokeWidth: width,
      ...(dash === undefined ? {} : { strokeDash: [...dash] }),
    },
    encoding: span,
  };
}

function named(mark: string, align: 'left' | 'right', dx: number, color: string): Layer {
  return {
    transform: only(mark),
    mark: { type: 'text', align, dx, color, baseline: 'middle' },
    encoding: { text: { field: 'text', type: 'nominal' } },
  };
}
