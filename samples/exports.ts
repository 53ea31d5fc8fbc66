import {
  halfReadings,
  halfSignals,
  halves,
  type PollStyle,
  pairReadings,
  pairSignals,
  pollsOf,
  stampCells,
  stampColumns,
} from './polls.ts';
import { formatStamp, type StampStyle } from './stamps.ts';
import type { HalfName, State, Story } from './story.ts';
import type { Wording } from './wordings.ts';

// A module that is out reports nothing but its blank identity.
const identity: readonly string[] = ['role', 'model', 'serial', 'firmware'];

/** One row per reading: time, unit, parameter, value. Several pairs share the export, in the order of time. */
export function readingsCsv(stories: Story | readonly Story[], style: PollStyle): string {
  const { wording, delimiter } = style;
  const spoken = new Set(identity.map((s) => wording.parameter(s)));
  const rows = [csvRow([...stampColumns(style), ...wording.readingColumns.slice(1)], delimiter)];
  for (const poll of pollsOf(stories, style)) {
    const stamp = stampCells(poll.time, style);
    const put = (half: HalfName | null, readings: readonly (readonly [string, string])[]): void => {
      for (const reading of readings)
        rows.push(csvRow([...stamp, wording.unit(poll.pair, half), ...reading], delimiter));
    };
    put(null, pairReadings(poll, style));
    for (const half of halves) {
      const readings = halfReadings(poll, half, style);
      const isOut = poll.state[half].role === 'none' && style.readsEmpty !== true;
      put(half, isOut ? readings.filter(([parameter]) => spoken.has(parameter)) : readings);
    }
  }
  return joined(rows);
}

/** One row per poll and half: time, unit, then a column per parameter. Pair signals stand in both rows. */
export function snapshotsByHalf(stories: Story | readonly Story[], style: PollStyle): string {
  const { wording, delimiter } = style;
  const signals = [...pairSignals, ...halfSignals, ...(style.load === undefined ? [] : ['load'])];
  const unit = wording.readingColumns.slice(1, 2);
  const names = signals.map((s) => wording.parameter(s));
  const rows = [csvRow([...stampColumns(style), ...unit, ...names], delimiter)];
  for (const poll of pollsOf(stories, style)) {
    for (const half of halves) {
      const values = [...pairReadings(poll, style), ...halfReadings(poll, half, style)].map(([, v]) => v);
      rows.push(
        csvRow([...stampCells(poll.time, style), wording.unit(poll.pair, half), ...values], delimiter),
      );
    }
  }
  return joined(rows);
}

const roleSignals = ['serial', 'model', 'firmware', 'light'] as const;

/** One row per poll: what the active and what the standby is, with no word about which half holds which role. */
export function snapshotsByRole(stories: Story | readonly Story[], style: PollStyle): string {
  const { delimiter } = style;
  const names = ['active', 'standby'].flatMap((role) => roleSignals.map((s) => `${role} ${s}`));
  const rows = [csvRow(['time', 'pair', ...pairSignals, ...names], delimiter)];
  for (const { pair, time, state } of pollsOf(stories, style)) {
    const values = halvesByRole(state).flatMap((half) => roleSignals.map((s) => state[half][s]));
    const cells = [formatStamp(time, style.stamp), pair, ...pairSignals.map((s) => state.pair[s]), ...values];
    rows.push(csvRow(cells, delimiter));
  }
  return joined(rows);
}

/** One row per poll and role: time, the pair as unit, the role, then what holds it. No word about slots either. */
export function snapshotsPerRole(stories: Story | readonly Story[], style: PollStyle): string {
  const { delimiter } = style;
  const rows = [csvRow(['time', 'unit', 'role', ...roleSignals, ...pairSignals], delimiter)];
  for (const { pair, time, state } of pollsOf(stories, style)) {
    for (const [index, half] of halvesByRole(state).entries()) {
      const role = index === 0 ? 'active' : 'standby';
      const values = [...roleSignals.map((s) => state[half][s]), ...pairSignals.map((s) => state.pair[s])];
      rows.push(csvRow([formatStamp(time, style.stamp), pair, role, ...values], delimiter));
    }
  }
  return joined(rows);
}

/** The active half, then the other; A first while a switchover leaves neither active. */
function halvesByRole(state: State): readonly [HalfName, HalfName] {
  return state.B.role === 'active' ? ['B', 'A'] : ['A', 'B'];
}

/** One message with its instant and unit, as a journal or a log keeps it. */
export interface Message {
  readonly time: number;
  readonly unit: string;
  readonly text: string;
}

/** What a journal holds: the condition at its begin, every event, and ordinary entries in between. */
export function messagesOf(
  story: Story,
  wording: Wording,
  ordinary: readonly Message[] = [],
): readonly Message[] {
  const say = (time: number, half: HalfName | null, text: string | null): Message[] =>
    text === null || text === '' ? [] : [{ time, unit: wording.unit(story.pair, half), text }];
  const stated = [
    ...pairSignals.flatMap((s) => say(story.from, null, wording.message(s, story.begin.pair[s]))),
    ...halves.flatMap((half) =>
      halfSignals.flatMap((s) => say(story.from, half, wording.message(s, story.begin[half][s]))),
    ),
  ];
  const happened = story.events.flatMap((e) =>
    // A module that is out says nothing of itself, and nobody journals a blank.
    e.value === '' ? [] : say(e.time, e.half, wording.message(e.signal, e.value)),
  );
  return inOrder([...stated, ...happened, ...ordinary]);
}

/** Messages of several pairs as one journal keeps them: in the order of time, else as given. */
export function inOrder(messages: readonly Message[]): readonly Message[] {
  return [...messages].sort((a, b) => a.time - b.time);
}

/** One row per entry: time, unit, message. */
export function journalCsv(
  messages: readonly Message[],
  columns: readonly string[],
  delimiter: string,
  stamp: StampStyle,
): string {
  const rows = messages.map((m) => csvRow([formatStamp(m.time, stamp), m.unit, m.text], delimiter));
  return joined([csvRow(columns, delimiter), ...rows]);
}

/** One text line per entry: stamp, unit in brackets, message. */
export function textLog(messages: readonly Message[], stamp: StampStyle): string {
  return joined(messages.map((m) => `${formatStamp(m.time, stamp)} [${m.unit}] ${m.text}`));
}

function joined(rows: readonly string[]): string {
  return `${rows.join('\n')}\n`;
}

/** The cells of a row; one that holds the delimiter is quoted. */
export function csvRow(cells: readonly string[], delimiter: string): string {
  return cells
    .map((cell) =>
      /["\n\r]/.test(cell) || cell.includes(delimiter) ? `"${cell.replaceAll('"', '""')}"` : cell,
    )
    .join(delimiter);
}
