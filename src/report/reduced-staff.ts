import type { Interval, Staff, StaffState, StaffStretch } from '../vocabulary.ts';
import { joinedStates } from './staff-lanes.ts';

type Drawn = StaffStretch['drawn'];
type Tick = Staff['ticks'][number];

/** What is seen where several fall into one column: a loss is never hidden by what is longer. */
const gravest: Readonly<Record<Drawn, number>> = {
  absent: 4,
  'not-ready': 3,
  unknown: 2,
  active: 1,
  ready: 0,
};

/**
 * The same staff with marks for `columns` columns of a picture: what is shorter than a column and shares it is drawn once.
 * Of several states the gravest is kept, a full column wide; happenings of one half in one column become one tick that
 * counts them. No loss and no happening is hidden, and the number of marks does not grow with the log.
 */
export function reducedStaff(staff: Staff, columns: number): Staff {
  const unit = (staff.to - staff.from) / columns;
  if (unit <= 0) return staff;
  const columnOf = (time: number): number =>
    Math.max(0, Math.min(columns - 1, Math.floor((time - staff.from) / unit)));
  return {
    ...staff,
    stretches: staff.halves.flatMap((half) => reducedLine(staff, half, columns, unit)),
    lights: reducedLights(staff.lights, unit),
    ticks: countedTicks(staff.ticks, columnOf),
    switchovers: firstOfEach(staff.switchovers, (s) => `${columnOf(s.time)}`),
    // A late bring-up is the one to see.
    bringUps: firstOfEach(
      staff.bringUps.toSorted((a, b) => Number(b.late) - Number(a.late) || a.from - b.from),
      (b) => `${b.half}\n${columnOf(b.from)}`,
    ),
    unobserved: joinedSpans(staff.unobserved, unit),
    states: reducedStates(staff.states, unit),
  };
}

/** States of a kind that are less than a column apart become one that counts them. */
function reducedStates(states: readonly StaffState[], unit: number): readonly StaffState[] {
  const kept = new Map<StaffState['kind'], StaffState[]>();
  for (const state of states.toSorted((a, b) => a.from - b.from)) {
    const own = kept.get(state.kind) ?? [];
    kept.set(state.kind, own);
    const last = own.at(-1);
    if (last === undefined || state.from - last.to >= unit) own.push(state);
    else own[own.length - 1] = joinedStates(last, state);
  }
  return [...kept.values()].flat();
}

/** One half's line. Stretches of a column and more stay as they are; shorter ones are merged column by column. */
function reducedLine(staff: Staff, half: string, columns: number, unit: number): readonly StaffStretch[] {
  const own = staff.stretches.filter((s) => s.half === half);
  if (own.length <= columns / 4) return own;
  const seen: (Drawn | undefined)[] = Array.from({ length: columns }, () => undefined);
  for (const { from, to, drawn } of own) {
    const first = Math.floor((from - staff.from) / unit);
    const last = Math.max(first, Math.ceil((to - staff.from) / unit) - 1);
    for (let column = Math.max(0, first); column <= Math.min(columns - 1, last); column += 1) {
      const there = seen[column];
      if (there === undefined || gravest[drawn] > gravest[there]) seen[column] = drawn;
    }
  }
  const line: { half: string; from: number; to: number; drawn: Drawn }[] = [];
  for (const [column, drawn] of seen.entries()) {
    const last = line.at(-1);
    const from = staff.from + column * unit;
    if (drawn === undefined) continue;
    if (last !== undefined && last.drawn === drawn && last.to >= from - unit / 2) last.to = from + unit;
    else line.push({ half, from, to: from + unit, drawn });
  }
  return line;
}

function reducedLights(lights: Staff['lights'], unit: number): Staff['lights'] {
  return (['steady', 'flashing'] as const).flatMap((light) =>
    [...new Set(lights.map((l) => l.half))].flatMap((half) =>
      joinedSpans(
        lights.filter((l) => l.half === half && l.light === light),
        unit,
      ).map((span) => ({ ...span, half, light })),
    ),
  );
}

/** `restart` twelve times in one column is one tick that says so. */
function countedTicks(ticks: readonly Tick[], columnOf: (time: number) => number): readonly Tick[] {
  const groups = new Map<string, Tick[]>();
  for (const tick of ticks) {
    const key = `${tick.half ?? ''}\n${tick.word}\n${columnOf(tick.time)}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [tick]);
    else group.push(tick);
  }
  return [...groups.values()].flatMap(([first, ...rest]) => {
    if (first === undefined) return [];
    return [rest.length === 0 ? first : { ...first, word: `${first.word}, ${rest.length + 1} times` }];
  });
}

function firstOfEach<T>(things: readonly T[], keyOf: (thing: T) => string): readonly T[] {
  const seen = new Set<string>();
  return things.filter((thing) => {
    const key = keyOf(thing);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Spans in the order of time; those less than a column apart become one. */
function joinedSpans(spans: readonly Interval[], unit: number): readonly Interval[] {
  const kept: { from: number; to: number }[] = [];
  for (const { from, to } of spans) {
    const last = kept.at(-1);
    if (last === undefined || from - last.to >= unit) kept.push({ from, to });
    else last.to = Math.max(last.to, to);
  }
  return kept;
}

/** The part of a staff between two instants, for a closer look. */
export function staffBetween(staff: Staff, from: number, to: number): Staff {
  const cut = <T extends Interval>(spans: readonly T[]): readonly T[] =>
    spans
      .filter((s) => s.to > from && s.from < to)
      .map((s) => ({ ...s, from: Math.max(from, s.from), to: Math.min(to, s.to) }));
  const inside = ({ time }: { readonly time: number }): boolean => time >= from && time <= to;
  return {
    ...staff,
    from,
    to,
    stretches: cut(staff.stretches),
    lights: cut(staff.lights),
    ticks: staff.ticks.filter(inside),
    switchovers: staff.switchovers.filter(inside),
    // One that began before keeps its begin: its bracket comes in from the left.
    bringUps: staff.bringUps
      .filter((b) => b.to >= from && b.from <= to)
      .map((b) => ({ ...b, to: Math.min(to, b.to) })),
    unobserved: cut(staff.unobserved),
    states: cut(staff.states),
  };
}
