import { Temporal } from 'temporal-polyfill';
import type { StaffRow } from '../charts/staff.ts';
import type { Staff } from '../vocabulary.ts';

/** Width of the drawing, in the picture's units: what has no room there is left out by the same rule everywhere. */
const width = 660;
const wordLevels = [1.5, 1.7, 1.9] as const;
const unitsPerLetter = 7.2;

/**
 * The marks of a staff. Instants become the clock of `zone`, counted as if it were UTC, so that the axis shows the
 * report's zone; the offset is that at the begin.
 */
export function staffRows(staff: Staff, zone: string): readonly StaffRow[] {
  const offset =
    Temporal.Instant.fromEpochMilliseconds(staff.from).toZonedDateTimeISO(zone).offsetNanoseconds / 1e6;
  const perUnit = (staff.to - staff.from) / width;
  const rows = [
    ...hatches(staff, perUnit),
    ...bands(staff, perUnit),
    ...lines(staff),
    ...lights(staff, perUnit),
    ...crossings(staff, perUnit),
    ...ticks(staff),
    ...brackets(staff),
    ...names(staff),
    ...words(staff, perUnit),
  ];
  return rows.map((row) => ({ ...row, x: row.x + offset, x2: row.x2 + offset }));
}

/** The first half is the upper line. */
function height(staff: Staff, half: string | null): number {
  return half === staff.halves[1] ? 0 : 1;
}

function row(mark: StaffRow['mark'], x: number, x2: number, y: number, y2: number, text = ''): StaffRow {
  return { mark, x, x2, y, y2, text };
}

/** Slanted strokes over both lines: no claim is made there. */
function hatches({ unobserved }: Staff, perUnit: number): readonly StaffRow[] {
  const step = 6 * perUnit;
  return unobserved.flatMap(({ from, to }) => {
    const strokes = Math.max(1, Math.floor((to - from) / step));
    return Array.from({ length: strokes }, (_, index) => {
      const x = from + index * step;
      return row('hatch', x, Math.min(to, x + step), -0.35, 1.3);
    });
  });
}

/** A faint band left of a change: it happened somewhere in there. Narrower than a unit there is nothing to see. */
function bands(staff: Staff, perUnit: number): readonly StaffRow[] {
  return [
    ...staff.ticks.map((t) => ({ ...t, height: height(staff, t.half) })),
    ...staff.switchovers.map((s) => ({ ...s, height: 0.5 })),
  ]
    .filter((t) => t.time - t.earliest > perUnit)
    .map((t) => row('band', t.earliest, t.time, t.height - 0.3, t.height + 0.3));
}

function lines(staff: Staff): readonly StaffRow[] {
  return staff.stretches.flatMap(({ half, from, to, drawn }) => {
    const y = height(staff, half);
    return drawn === 'absent' ? [] : [row(drawn, from, to, y, y)];
  });
}

function lights(staff: Staff, perUnit: number): readonly StaffRow[] {
  return staff.lights.flatMap(({ half, light, from, to }) => {
    const y = height(staff, half) - 0.13;
    if (light === 'steady') return [row('steady', from, to, y, y)];
    const step = 4 * perUnit;
    const strokes = Math.max(1, Math.floor((to - from) / step));
    return Array.from({ length: strokes }, (_, index) =>
      row('flash', from + index * step, from + index * step, y - 0.05, y + 0.05),
    );
  });
}

/** The two lines cross over: the heavy one goes to the half that takes the active role. */
function crossings(staff: Staff, perUnit: number): readonly StaffRow[] {
  const reach = 5 * perUnit;
  return staff.switchovers.flatMap(({ time, fromHalf, toHalf }) => {
    const [from, to] = [height(staff, fromHalf), height(staff, toHalf)];
    return [
      row('active', time - reach, time + reach, from, to),
      row('ready', time - reach, time + reach, to, from),
    ];
  });
}

function ticks(staff: Staff): readonly StaffRow[] {
  return staff.ticks.map(({ time, half }) => {
    const y = height(staff, half);
    return row('tick', time, time, y - 0.2, y + 0.2);
  });
}

/** From the start of a bring-up to where it settled, with a flag at five minutes; what runs past it is rust. */
function brackets(staff: Staff): readonly StaffRow[] {
  return staff.bringUps.flatMap(({ half, from, to, flag, late }) => {
    const y = height(staff, half) - 0.34;
    const shown = Math.min(to, flag);
    const open = [
      row('bracket', from, shown, y, y),
      row('bracket', from, from, y, y + 0.1),
      row('bracket', to, to, y, y + 0.1),
    ];
    const mark = flag <= staff.to ? [row('flag', flag, flag, y - 0.12, y + 0.06)] : [];
    return late ? [...open, ...mark, row('late', flag, to, y, y)] : [...open, ...mark];
  });
}

function names(staff: Staff): readonly StaffRow[] {
  return staff.halves.map((half) =>
    row('name', staff.from, staff.from, height(staff, half), height(staff, half), half),
  );
}

/** Words above the staff, in three rows; one that has no room in any of them is left out. Its tick stays. */
function words(staff: Staff, perUnit: number): readonly StaffRow[] {
  const spoken = [
    ...staff.ticks.map(({ time, half, word }) => ({ time, text: half === null ? word : `${half} ${word}` })),
    ...staff.switchovers.map(({ time }) => ({ time, text: 'switchover' })),
    ...staff.bringUps.filter((b) => b.late).map((b) => ({ time: b.flag, text: `${b.half} past 5 min` })),
  ].sort((a, b) => a.time - b.time);
  const free: number[] = wordLevels.map(() => Number.NEGATIVE_INFINITY);
  return spoken.flatMap(({ time, text }) => {
    const level = wordLevels.findIndex((_, index) => (free[index] ?? 0) <= time);
    const y = wordLevels[level];
    const end = time + (text.length * unitsPerLetter + 8) * perUnit;
    if (y === undefined || end > staff.to + 20 * perUnit) return [];
    free[level] = end;
    return [row('word', time, time, y, y, text)];
  });
}
