import type { StaffRow } from '../charts/staff.ts';
import { type Staff, type StaffState, type StaffStateKind, staffStateKinds } from '../vocabulary.ts';
import { nameState, sayState } from './staff-state-words.ts';
import { unitsPerLetter } from './staff-words.ts';

/** Heights below the lower line, in the distance of the two lines. */
const firstLane = -1.72;
const laneStep = 0.47;
const wordBelow = 0.25;
const axisBelow = 0.2;
/** Between two labels, in units. */
const labelGap = 8;
/** Where the time axis lies under the lower line if there is no lane. */
const axisAlone = -1.55;

const critical: ReadonlySet<StaffStateKind> = new Set(['two-active', 'none-active', 'past-limit']);

/** The kinds of states that a staff has, the gravest first: each has a lane under the two lines. */
export function lanesOf({ states }: Pick<Staff, 'states'>): readonly StaffStateKind[] {
  return staffStateKinds.filter((kind) => states.some((s) => s.kind === kind));
}

/** A bar for every state in the lane of its kind, each with its words where there is room, and the time axis under them. */
export function laneRows(
  staff: Staff,
  lanes: readonly StaffStateKind[],
  perUnit: number,
): readonly StaffRow[] {
  const rows = lanes.flatMap((kind, index) => {
    const y = firstLane - index * laneStep;
    const look = lookOf(kind);
    const own = staff.states.filter((s) => s.kind === kind);
    const bar = ({ from, to }: StaffState): StaffRow => {
      // What is shorter than a unit could not be seen.
      const end = Math.min(staff.to, Math.max(to, from + 2 * perUnit));
      return { mark: look, x: Math.min(from, end - 2 * perUnit), x2: end, y, y2: y, text: '' };
    };
    const word = ({ x, text }: Label): StaffRow => ({
      mark: `${look}-word`,
      x,
      x2: x,
      y: y - wordBelow,
      y2: y - wordBelow,
      text,
    });
    return [...own.map(bar), ...labelsOf(own, staff, perUnit).map(word)];
  });
  const lowest =
    lanes.length === 0 ? axisAlone : firstLane - (lanes.length - 1) * laneStep - wordBelow - axisBelow;
  return [...rows, { mark: 'axis', x: staff.from, x2: staff.to, y: lowest, y2: lowest, text: '' }];
}

function lookOf(kind: StaffStateKind): 'critical' | 'warning' | 'unobserved' {
  if (kind === 'unobserved') return 'unobserved';
  return critical.has(kind) ? 'critical' : 'warning';
}

/** A text and where it begins. */
export interface Label {
  readonly x: number;
  readonly text: string;
}

/**
 * What is written under the bars of a lane, from the left: each state by itself where there is room, else together with those
 * after it. No label meets another, and none runs past the end of the staff; all states are told of, but where there is no
 * room even for the name. `perUnit` is milliseconds per unit of the drawing.
 */
export function labelsOf(
  states: readonly StaffState[],
  { from, to, limitSeconds }: Pick<Staff, 'from' | 'to' | 'limitSeconds'>,
  perUnit: number,
): readonly Label[] {
  const groups: (StaffState & { readonly x: number; readonly end: number; readonly text: string })[] = [];
  const placed = (state: StaffState): (typeof groups)[number] => {
    const text = sayState(state, limitSeconds);
    const length = lengthOf(text) * perUnit;
    const x = Math.max(from, Math.min(state.from, to - length));
    return { ...state, x, end: x + length + labelGap * perUnit, text };
  };
  for (const state of states.toSorted((a, b) => a.from - b.from)) {
    let last = placed(state);
    for (let before = groups.at(-1); before !== undefined && before.end > last.x; before = groups.at(-1)) {
      groups.pop();
      last = placed(joinedStates(before, last));
    }
    groups.push(last);
  }
  return groups.flatMap(({ x, text, kind, count }) => {
    const name = nameState(kind, limitSeconds);
    const shorter = [text, ...(count > 1 ? [`${name} ${count} times`] : []), name];
    const said = shorter.find((words) => lengthOf(words) * perUnit <= to - from);
    return said === undefined ? [] : [{ x, text: said }];
  });
}

function lengthOf(text: string): number {
  return text.length * unitsPerLetter;
}

/** Two states of a kind told as one. */
export function joinedStates(a: StaffState, b: StaffState): StaffState {
  return {
    ...a,
    to: Math.max(a.to, b.to),
    half: a.half === b.half ? a.half : null,
    seconds: a.seconds + b.seconds,
    count: a.count + b.count,
    losses: a.losses + b.losses,
    goesOn: a.goesOn || b.goesOn,
  };
}
