import type { RunPlace } from '../changes/sink.ts';
import type { ByteRow } from './byte-row.ts';
import type { KnownRun } from './known-rows.ts';

/** Where known runs stand in a piece; they have a row of their own, since theirs are asked for between others. */
export interface KnownPlace extends RunPlace {
  bytes: Uint8Array;
  readonly row: ByteRow;
  rowIn(run: KnownRun, row: number): ReturnType<RunPlace['rowIn']>;
}

/** Nowhere yet; `row` becomes each row that is asked for. */
export function knownPlace(row: ByteRow): KnownPlace {
  const place: KnownPlace = {
    bytes: new Uint8Array(0),
    first: 0,
    end: 0,
    from: 0,
    line: 0,
    row,
    rowIn(run, index) {
      setRow(row, { bytes: place.bytes, from: run.from, line: run.line }, run, index);
      return row;
    },
  };
  return place;
}

/** Makes `row` a row of a run that stands, or would begin, at a place in a piece. */
export function setRow(
  row: ByteRow,
  { bytes, from, line }: Pick<KnownPlace, 'bytes' | 'from' | 'line'>,
  { edges }: KnownRun,
  index: number,
): void {
  row.set(bytes, from + (edges[index] ?? 0), from + (edges[index + 1] ?? 0), line + index);
}
