import type { TableReader } from '../bytes/csv-rows.ts';
import type { Row } from '../bytes/row.ts';
import type { Recorded } from '../changes/recorded.ts';
import type { TimeReader } from '../clock/time-reader.ts';
import type { Replay } from './replay.ts';
import type { ColumnPlaces } from './row-template.ts';

/** Takes the bytes of a file chunk by chunk. */
export interface Lane {
  push(chunk: Uint8Array): void;
  /** After whole lines: takes what may still go on, as `OpenRows.settle` does. */
  settle(): boolean;
  end(): void;
}

/** What a table is read with as bytes. */
export interface LaneOptions {
  readonly delimiter: number;
  readonly places: ColumnPlaces;
  readonly decode: (bytes: Uint8Array) => string;
  readonly times: TimeReader;
  readonly replay: Replay;
  /** The general reader: it takes what is irregular. */
  readonly general: TableReader;
  /** Takes a row that is not known; gives what is recorded of it, if a row of the same content would give just that. */
  readonly take: (row: Row) => readonly Recorded[] | null;
}
