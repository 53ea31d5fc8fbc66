import type { Row } from '../bytes/row.ts';
import type { ByteRow } from './byte-row.ts';
import type { Batch } from './row-template.ts';

/** Where a batch stands in a chunk: which of its rows came, and where its first row begins, or would begin. */
export interface BatchPlace {
  bytes: Uint8Array;
  first: number;
  /** The row after the last. */
  end: number;
  from: number;
  line: number;
  /** Becomes each row that is asked for: another is in use meanwhile. */
  readonly row: ByteRow;
  /** A row of a batch, where that batch stood last in this chunk. */
  rowIn(batch: Batch, index: number): Row;
}

/** Nowhere yet. */
export function batchPlace(row: ByteRow): BatchPlace {
  const place: BatchPlace = {
    bytes: new Uint8Array(0),
    first: 0,
    end: 0,
    from: 0,
    line: 0,
    row,
    rowIn(batch, index) {
      setRow(row, { bytes: place.bytes, from: batch.from, line: batch.line }, batch, index);
      return row;
    },
  };
  return place;
}

/** Makes `row` a row of a batch that begins, or would begin, at a place in a chunk. */
export function setRow(
  row: ByteRow,
  { bytes, from, line }: Pick<BatchPlace, 'bytes' | 'from' | 'line'>,
  { edges }: Batch,
  index: number,
): void {
  row.set(bytes, from + (edges[index] ?? 0), from + (edges[index + 1] ?? 0), line + index);
}
