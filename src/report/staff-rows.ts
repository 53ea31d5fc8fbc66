import { Temporal } from 'temporal-polyfill';
import type { StaffRow } from '../charts/staff.ts';
import type { Staff } from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { wordRows } from './staff-words.ts';

/** Width of the drawing, in the picture's units: what has no room there is left out by the same rule everywhere. */
const width = 660;

/**
 * The marks of a staff. Instants become the clock of `zone`, counted as if it were UTC, so that the axis shows the
 * report's zone; the offset is that at the start.
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
    ...brackets(staff, perUnit),
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
      return row('hatch', x, Math.min(to, x + step), -0.5, 1.25);
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
  const reach = 7 * perUnit;
  return staff.switchovers.flatMap(({ time, fromHalf, toHalf }) => {
    const [from, to] = [height(staff, fromHalf), height(staff, toHalf)];
    return [
      row('active', time - reach, time + reach, from, to, switchoverWord),
      row('ready', time - reach, time + reach, to, from),
    ];
  });
}

function ticks(staff: Staff): readonly StaffRow[] {
  return staff.ticks.map((tick) => {
    const y = height(staff, tick.half);
    return row('tick', tick.time, tick.time, y - 0.2, y + 0.2, wordOf(tick));
  });
}

/** From the start of a bring-up to where it settled, with a flag at five minutes; what runs past it is rust. */
function brackets(staff: Staff, perUnit: number): readonly StaffRow[] {
  return staff.bringUps.flatMap(({ half, from, to, flag, late }) => {
    const y = height(staff, half) - 0.34;
    const shown = Math.min(to, flag);
    const open = [
      row('bracket', from, shown, y, y),
      row('bracket', from, from, y, y + 0.1),
      row('bracket', to, to, y, y + 0.1),
    ];
    const mark = flag <= staff.to ? flagAt(flag, y, perUnit) : [];
    if (!late) return [...open, ...mark, ...(mark.length > 0 ? [row('to-flag', to, flag, y, y)] : [])];
    const past = `past ${Math.round(staff.limitSeconds / 60)} min`;
    return [
      ...open,
      ...mark,
      row('late', flag, to, y, y, `${terminal(half)} ${past}`),
      row('late-word', to, to, y - 0.17, y - 0.17, past),
    ];
  });
}

/** A pole with a pennant. */
function flagAt(time: number, y: number, perUnit: number): readonly StaffRow[] {
  const [foot, tip] = [y - 0.1, y + 0.12];
  const end = time + 6 * perUnit;
  return [
    row('flag', time, time, foot, tip),
    row('flag', time, end, tip, tip - 0.04),
    row('flag', time, end, tip - 0.08, tip - 0.04),
  ];
}

function names(staff: Staff): readonly StaffRow[] {
  return staff.halves.map((half) =>
    row('name', staff.from, staff.from, height(staff, half), height(staff, half), terminal(half)),
  );
}

const switchoverWord = 'switchover';

function wordOf({ half, word }: Staff['ticks'][number]): string {
  const said = terminal(word).replaceAll('-', ' ');
  return half === null ? said : `${terminal(half)} ${said}`;
}

/** The upper line's words above it, the lower line's beneath: between them the lines cross. */
function words(staff: Staff, perUnit: number): readonly StaffRow[] {
  const end = staff.to + 60 * perUnit;
  const ticks = staff.ticks.map((t) => ({ time: t.time, text: wordOf(t), y: height(staff, t.half) }));
  const turns = staff.switchovers.map(({ time }) => ({ time, text: switchoverWord, y: 1 }));
  const [upper, lower] = [1, 0].map((y) => [...ticks, ...turns].filter((w) => w.y === y));
  return [...wordRows(upper ?? [], 1, 1, perUnit, end), ...wordRows(lower ?? [], 0, -1, perUnit, end)];
}
