import type { Row } from '../bytes/row.ts';
import type { Sink } from '../changes/sink.ts';
import { explain, type TimeReader } from '../clock/time-reader.ts';

/** The text of a row's date, where its columns of the time are known. */
export function dateCell([date = 0]: readonly number[]): (row: Row) => string {
  return (row) => row.cell(date);
}

/** Reads the instant of a row from one column, or from a date and a clock; rejects the row and gives `undefined` if it cannot. */
export function stampOf(
  row: Row,
  columns: readonly number[],
  times: TimeReader,
  sink: Sink,
): number | undefined {
  const [date, clock] = columns;
  const text =
    clock === undefined ? row.cell(date ?? 0) : `${row.cell(date ?? 0).trim()} ${row.cell(clock).trim()}`;
  const at = times.read(text);
  if (typeof at === 'number') return at;
  const { what, fix, setting } = explain(text, at);
  sink.reject(what, fix, setting);
  return undefined;
}
