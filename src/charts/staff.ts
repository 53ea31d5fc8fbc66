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

/** How a mark looks: a stroke, a faint ground, or text that ends or begins at its instant. */
interface Look {
  readonly kind: 'stroke' | 'ground' | 'before' | 'after';
  readonly color: string;
  readonly width: number;
  readonly dash: readonly number[] | null;
}

function stroke(color: string, width: number, dash: readonly number[] | null = null): Look {
  return { kind: 'stroke', color, width, dash };
}

function words(kind: 'before' | 'after', color: string): Look {
  return { kind, color, width: 0, dash: null };
}

/** In the order in which they are drawn, one over the other. */
const looks: Readonly<Record<StaffRow['mark'], Look>> = {
  band: { kind: 'ground', color: rule, width: 0, dash: null },
  hatch: stroke(secondInk, 0.6),
  leader: stroke(secondInk, 0.6),
  unknown: stroke(secondInk, 1, [1, 3]),
  'not-ready': stroke(ink, 1.3, [5, 3]),
  ready: stroke(ink, 1.3),
  active: stroke(ink, 4),
  steady: stroke(ink, 0.7),
  flash: stroke(ink, 0.8),
  tick: stroke(ink, 1.3),
  bracket: stroke(secondInk, 1.2),
  late: stroke(rust, 2.4),
  flag: stroke(ink, 1.2),
  'to-flag': stroke(secondInk, 1, [1, 3]),
  critical: stroke(rust, 6),
  warning: stroke(ochre, 4),
  unobserved: stroke(secondInk, 4, [1, 2]),
  axis: stroke(secondInk, 1),
  name: words('before', ink),
  word: words('after', ink),
  'critical-word': words('after', rust),
  'warning-word': words('after', ochre),
  'unobserved-word': words('after', secondInk),
};
const order: readonly string[] = Object.keys(looks);

/** A row with its look: a few layers draw them all, so that another window is drawn within a frame. */
function withLook(row: StaffRow): StaffRow & Look {
  return { ...row, ...looks[row.mark] };
}

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
    data: {
      values: rows.map(withLook).sort((a, b) => order.indexOf(a.mark) - order.indexOf(b.mark)),
    },
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
      { transform: only('ground'), mark: { type: 'rect', opacity: 0.6 }, encoding: { ...span, ...coloured } },
      { transform: only('stroke'), mark: 'rule', encoding: { ...span, ...coloured, ...stroked } },
      written('before', 'right', -6),
      written('after', 'left', 3),
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
const coloured = { color: { field: 'color', type: 'nominal', scale: null } } as const;
const stroked = {
  strokeWidth: { field: 'width', type: 'quantitative', scale: null },
  strokeDash: { field: 'dash', type: 'nominal', scale: null },
} as const;

type Layer = LayerSpec<string> | UnitSpec<string>;

function only(kind: Look['kind']): { readonly filter: { readonly field: 'kind'; readonly equal: string } }[] {
  return [{ filter: { field: 'kind', equal: kind } }];
}

function written(kind: Look['kind'], align: 'left' | 'right', dx: number): Layer {
  return {
    transform: only(kind),
    mark: { type: 'text', align, dx, baseline: 'middle' },
    encoding: { text: { field: 'text', type: 'nominal' }, ...coloured },
  };
}
