import { csvRows, type RowReader } from './csv-rows.ts';
import { records } from './records.ts';
import type { Row } from './row.ts';
import { textLines } from './text-lines.ts';
import { noZeroBytes, type ZeroBytes } from './zero-bytes.ts';

/** How a file is cut into rows. */
export interface RowShape {
  /** `null` for a text. */
  readonly delimiter: string | null;
  /** True for a line of a text that begins a record; undefined where every line is one. */
  readonly begins?: ((line: string) => boolean) | undefined;
}

/** Rows, and whether any line began a record where lines are put together to such. */
export interface OpenRows extends RowReader {
  hasRecords(): boolean;
}

/** The rows of a table with that delimiter; the lines of a text, or its records. */
export function rowReader(
  { delimiter, begins }: RowShape,
  onRow: (row: Row) => void,
  zeros: ZeroBytes = noZeroBytes(),
): OpenRows {
  if (delimiter !== null) return { ...csvRows(delimiter, onRow, zeros), hasRecords: () => true };
  if (begins === undefined) return { ...textLines(onRow, zeros), hasRecords: () => true };
  const found = records(begins, onRow);
  const lines = textLines(found.add, zeros);
  return {
    push: lines.push,
    end() {
      lines.end();
      found.end();
    },
    hasRecords: () => found.count() > 0,
  };
}
