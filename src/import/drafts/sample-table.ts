import { csvRows } from '../bytes/csv-rows.ts';
import { stampTest } from '../layouts/column-content.ts';
import { columnNumber } from '../layouts/head.ts';

/** The start of a table, cut into columns, whatever they are called. */
export interface SampleTable {
  readonly delimiter: string;
  /** The line of the header; of a table without one the line before its first row. */
  readonly headerLine: number;
  /** What each column is called; `#3` where it has no name of its own. */
  readonly names: readonly string[];
  readonly rows: readonly SampleRow[];
}

export interface SampleRow {
  readonly line: number;
  /** Not trimmed. */
  readonly cells: readonly string[];
}

const delimiters = ['\t', ';', ',', '|'] as const;
const leastWidth = 2;
const leastRows = 2;
/** So much of a text is read for a sample. */
const mostRows = 200;

/** The table that a text begins with: by the delimiter that cuts most of its rows into one width. `null` where it is none. */
export function sampleTable(text: string): SampleTable | null {
  const [best] = delimiters
    .map((delimiter) => ({ delimiter, rows: evenRows(text, delimiter) }))
    .toSorted((a, b) => b.rows.length - a.rows.length);
  const first = best?.rows[0];
  if (best === undefined || first === undefined || best.rows.length < leastRows) return null;
  const { isStamp, isDate } = stampTest({ pattern: undefined });
  const isRow = first.cells.some((cell) => isStamp(cell.trim()) || isDate(cell.trim()));
  const names = isRow ? first.cells.map((_, i) => `#${i + 1}`) : namesOf(first.cells);
  return {
    delimiter: best.delimiter,
    headerLine: isRow ? first.line - 1 : first.line,
    names,
    rows: isRow ? best.rows : best.rows.slice(1),
  };
}

/** The rows of the width that most rows have. */
function evenRows(text: string, delimiter: string): readonly SampleRow[] {
  const rows: SampleRow[] = [];
  const reader = csvRows(delimiter, (row) => {
    if (rows.length < mostRows)
      rows.push({ line: row.line, cells: Array.from({ length: row.width() }, (_, i) => row.cell(i)) });
  });
  reader.push(text);
  reader.end();
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  const [width = 0] = [...counts].filter(([w]) => w >= leastWidth).toSorted((a, b) => b[1] - a[1])[0] ?? [];
  return width === 0 ? [] : rows.filter(({ cells }) => cells.length === width);
}

/** A name that two columns have, or none, is no name: a rule would not know which is meant. */
function namesOf(header: readonly string[]): readonly string[] {
  const trimmed = header.map((name) => name.trim());
  const counts = new Map<string, number>();
  for (const name of trimmed) counts.set(name, (counts.get(name) ?? 0) + 1);
  return trimmed.map((name, i) =>
    name === '' || counts.get(name) !== 1 || columnNumber(name) !== null ? `#${i + 1}` : name,
  );
}
