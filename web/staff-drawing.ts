import type { TopLevelSpec } from 'vega-lite';
import { staff as staffChart } from '../src/charts/staff.ts';
import { stateRows } from '../src/charts/state-rows.ts';
import type { PairHealth } from '../src/pipeline.ts';
import { reducedStaff, staffBetween } from '../src/report/reduced-staff.ts';
import { lanesOf } from '../src/report/staff-lanes.ts';
import { clockAhead, staffRows } from '../src/report/staff-rows.ts';
import { foldedStates, stateRowRows } from '../src/report/state-spans.ts';
import type { Interval } from '../src/vocabulary.ts';

/** Where the time axis stands in a drawing as wide as its column, in pixels from either side. */
export interface Beside {
  readonly left: number;
  readonly right: number;
}

/** Names stand to the left, a word that runs over the end to the right. */
const wide: Beside = { left: 92, right: 56 };
const narrow: Beside = { left: 82, right: 12 };
const narrowest = 600;
const paddingTop = 2;

export function besideIn(room: number): Beside {
  return room < narrowest ? narrow : wide;
}

/** The width of the time axis in a column of `room` pixels. */
export function axisWidth(room: number): number {
  const { left, right } = besideIn(room);
  return Math.max(1, room - left - right);
}

/** The staff over one window, and its sentence. */
export interface StaffDrawing {
  readonly spec: TopLevelSpec;
  readonly said: string;
}

/** The staff of a pair over a window, in a column of `room` pixels. */
export function drawStaff(health: PairHealth, shown: Interval, zone: string, room: number): StaffDrawing {
  const width = axisWidth(room);
  const part = reducedStaff(staffBetween(health.staff, shown.from, shown.to), width);
  const rows = staffRows(part, zone, { width, right: besideIn(room).right }, lanesOf(health.staff));
  return { spec: inColumn(staffChart.spec(rows), room, 22), said: staffChart.describe(rows) };
}

/** What the halves reported besides, in rows under the staff: those that changed or are not as they should be; a line for the rest. */
export interface RowsDrawing {
  readonly spec: TopLevelSpec | null;
  readonly said: string;
  readonly rest: readonly string[];
}

export function drawStates(health: PairHealth, shown: Interval, zone: string, room: number): RowsDrawing {
  const { told, rest } = foldedStates(health.spans, shown);
  const rows = stateRowRows(told, shown, clockAhead(shown.from, zone), axisWidth(room));
  return {
    spec: rows.length === 0 ? null : inColumn(stateRows.spec(rows), room, 4),
    said: stateRows.describe(rows),
    rest,
  };
}

/** A chart as wide as its column, with its axis where that of the staff is. */
function inColumn(spec: TopLevelSpec, room: number, bottom: number): TopLevelSpec {
  if (!('layer' in spec)) return spec;
  const padding = { ...besideIn(room), top: paddingTop, bottom };
  return { ...spec, width: axisWidth(room), autosize: { type: 'none' }, padding };
}
