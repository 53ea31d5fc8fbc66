import Papa from 'papaparse';
import type { Row } from './importer.ts';

/** Takes text piece by piece and hands on one row at a time. */
export interface RowReader {
  push(text: string): void;
  end(): void;
}

/** A row that goes on for this long is none: an unclosed quote, or a file of one endless line. */
const longestRow = 1_048_576;

/**
 * Rows of a table in text with one delimiter. Blank rows are passed over. `onRow` gets the same object for every row.
 * Lines are counted here: the parser's row numbers are not line numbers where a quoted cell holds a line end.
 */
export function csvRows(delimiter: string, onRow: (row: Row) => void): RowReader {
  let rest = '';
  let line = 1;
  let cells: readonly string[] = [];
  let source = '';
  let from = 0;
  let to = 0;
  let rowLine = 1;
  const row: Row = {
    get line() {
      return rowLine;
    },
    cell: (column) => cells[column] ?? '',
    width: () => cells.length,
    text: () => source.slice(from, to).replace(/[\r\n]+$/, ''),
  };

  const emit = (found: readonly string[], end: number): void => {
    from = to;
    to = end;
    rowLine = line;
    line += linesIn(source, from, to);
    cells = withoutReturn(found);
    if (cells.length > 1 || cells[0] !== '') onRow(row);
  };

  const parse = (isLast: boolean): void => {
    source = rest;
    to = 0;
    const parser = new Papa.Parser({
      delimiter,
      newline: '\n',
      step: ({ data, meta }: { data: readonly (readonly string[])[]; meta: { cursor: number } }) => {
        const found = data[0];
        if (found !== undefined && meta.cursor > to) emit(found, meta.cursor);
      },
    });
    parser.parse(source, 0, !isLast);
    rest = source.slice(to);
  };

  const breakEndless = (): void => {
    const newline = rest.indexOf('\n');
    source = rest;
    to = 0;
    // Only its begin is kept: the row is rejected for its columns, and what follows is read.
    emit([rest.slice(0, 200)], newline < 0 ? rest.length : newline + 1);
    rest = rest.slice(to);
  };

  return {
    push(text) {
      rest += text;
      parse(false);
      while (rest.length > longestRow) {
        breakEndless();
        parse(false);
      }
    },
    end() {
      if (rest !== '') parse(true);
    },
  };
}

function linesIn(text: string, from: number, to: number): number {
  let count = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

/** Rows that end in CR LF are split at the LF: the CR is no part of the last cell. */
function withoutReturn(cells: readonly string[]): readonly string[] {
  const last = cells.at(-1);
  return last?.endsWith('\r') === true ? [...cells.slice(0, -1), last.slice(0, -1)] : cells;
}
