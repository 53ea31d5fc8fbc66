import type { Row } from '../bytes/row.ts';
import type { Sink } from './sink.ts';

/** Reads the instant of a row, and nothing else of it, by the function that reads rows; undefined where it has none. */
export function rowInstant(take: (row: Row, sink: Sink) => void): (row: Row) => number | undefined {
  let instant: number | undefined;
  const note = (at: number): void => {
    instant = at;
  };
  const probe: Sink = {
    reading: note,
    unread: note,
    entry: note,
    note,
    reject: () => undefined,
    ignore: () => undefined,
  };
  return (row) => {
    instant = undefined;
    take(row, probe);
    return instant;
  };
}
