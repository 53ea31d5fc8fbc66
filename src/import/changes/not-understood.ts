import type { Stream, StreamPoint, UnknownRows } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { type KeptRow, keptRow, keptText, type Row } from '../bytes/row.ts';

/** The rows of one unit that were not understood. */
export interface NotUnderstood {
  first: StreamPoint;
  lastTime: number;
  lastLine: number;
  readonly lastRow: KeptRow;
  /** How many there were in each minute since 1970, all but the one that goes on. */
  readonly minutes: Map<number, number>;
  /** When the minute began that goes on, and how many there were in it. */
  minute: number;
  count: number;
  /** The newest of all minutes in which any were counted. */
  newest: number;
}

/** How many more minutes of a file may be counted, over all its units. */
export interface MinutesLeft {
  /** Of rows whose parameter or unit a poll never understands: they come with every poll. */
  habit: number;
  /** Of all others. */
  other: number;
}

const minuteMs = 60_000;
/** A minute takes some forty bytes. Chosen here. */
const mostMinutes = 50_000;

/** Nothing is counted yet. */
export function allMinutes(): MinutesLeft {
  return { habit: mostMinutes, other: mostMinutes };
}

/**
 * Counts a row that was not understood. Past so many minutes of a file none is added, so that a column that no poll of a
 * year explains takes no memory; what comes seldom has its own share, and is not crowded out.
 */
export function countRow(
  known: NotUnderstood | null,
  at: number,
  row: Row,
  left: MinutesLeft,
  share: keyof MinutesLeft,
): NotUnderstood {
  const rows = known ?? noneUnderstood(at, row);
  if (at < rows.first.time) rows.first = { time: at, line: row.line, text: row.ownText() };
  if (at >= rows.lastTime) {
    rows.lastTime = at;
    rows.lastLine = row.line;
    row.keep(rows.lastRow);
  }
  const isSame = at >= rows.minute && at - rows.minute < minuteMs;
  if (isSame || beginMinute(rows, at, left, share)) rows.count += 1;
  return rows;
}

/** Goes on with the minute of an instant; false where there is no room for another. */
function beginMinute(rows: NotUnderstood, at: number, left: MinutesLeft, share: keyof MinutesLeft): boolean {
  endMinute(rows);
  const minute = Math.floor(at / minuteMs);
  // Of rows in order none is in a minute before the newest: without room there is nothing to look up.
  if (left[share] === 0 && minute > rows.newest) return false;
  const known = rows.minutes.get(minute);
  if (known === undefined && left[share] === 0) return false;
  if (known === undefined) left[share] -= 1;
  rows.minute = minute * minuteMs;
  rows.newest = Math.max(rows.newest, minute);
  rows.count = known ?? 0;
  return true;
}

function endMinute(rows: NotUnderstood): void {
  if (rows.count > 0) rows.minutes.set(rows.minute / minuteMs, rows.count);
  rows.minute = Number.NaN;
  rows.count = 0;
}

function noneUnderstood(at: number, row: Row): NotUnderstood {
  const first = { time: at, line: row.line, text: row.ownText() };
  return {
    first,
    lastTime: at,
    lastLine: row.line,
    lastRow: keptRow(),
    minutes: new Map(),
    minute: Number.NaN,
    count: 0,
    newest: Number.NEGATIVE_INFINITY,
  };
}

/** The minutes in the order of time. */
export function minutesOf(rows: NotUnderstood | null): readonly UnknownRows[] {
  if (rows === null) return [];
  endMinute(rows);
  return [...rows.minutes]
    .map(([minute, count]) => ({ from: minute * minuteMs, count }))
    .sort((a, b) => a.from - b.from);
}

/** The first and the last of the rows. */
export function endsOf({
  first,
  lastTime,
  lastLine,
  lastRow,
}: NotUnderstood): Pick<Stream, 'first' | 'last'> {
  return { first, last: { time: lastTime, line: lastLine, text: detached(keptText(lastRow)) } };
}
