import { csvRows, type RowReader } from './csv-rows.ts';
import type { Row } from './row.ts';
import { textLines } from './text-lines.ts';
import { noZeroBytes, type ZeroBytes } from './zero-bytes.ts';

/** The rows of a table with that delimiter, or the lines of a text where it is `null`. */
export function rowReader(
  delimiter: string | null,
  onRow: (row: Row) => void,
  zeros: ZeroBytes = noZeroBytes(),
): RowReader {
  return delimiter === null ? textLines(onRow, zeros) : csvRows(delimiter, onRow, zeros);
}
