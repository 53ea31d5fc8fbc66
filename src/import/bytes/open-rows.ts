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
  /**
   * After whole lines: takes what may still go on as it stands, though more may follow. False where lines wait all the same,
   * since a quote is open.
   */
  settle(): boolean;
  /** True once something came that belongs to what was taken so. */
  wentOn(): boolean;
}

/** The rows of a table with that delimiter; the lines of a text, or its records. */
export function rowReader(
  { delimiter, begins }: RowShape,
  onRow: (row: Row) => void,
  zeros: ZeroBytes = noZeroBytes(),
): OpenRows {
  if (delimiter !== null) {
    const table = csvRows(delimiter, onRow, zeros);
    return { ...table, ...alwaysRecords, settle: () => !table.isWaiting() };
  }
  if (begins === undefined) return { ...textLines(onRow, zeros), ...alwaysRecords, settle: () => true };
  const found = records(begins, onRow);
  const lines = textLines(found.add, zeros);
  return {
    push: lines.push,
    end() {
      lines.end();
      found.end();
    },
    hasRecords: () => found.count() > 0,
    settle() {
      found.settle();
      return true;
    },
    wentOn: found.wentOn,
  };
}

const alwaysRecords = { hasRecords: () => true, wentOn: () => false } as const;
