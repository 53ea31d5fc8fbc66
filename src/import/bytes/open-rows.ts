import type { Plan } from '../layouts/recognise.ts';
import { csvRows, type RowReader } from './csv-rows.ts';
import type { Row } from './row.ts';
import { textLines } from './text-lines.ts';

/** The rows of a table, or the lines of a text, as the plan for a file says. */
export function rowReader(plan: Plan, onRow: (row: Row) => void): RowReader {
  return plan.delimiter === null ? textLines(onRow) : csvRows(plan.delimiter, onRow);
}
