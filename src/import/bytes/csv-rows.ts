import Papa from 'papaparse';
import { detached } from './decode.ts';
import { keepText, type Row, withoutLineEnd } from './row.ts';
import { linesBehindZeros, noZeroBytes, surplusZeros, type ZeroBytes } from './zero-bytes.ts';

/** Takes text chunk by chunk and hands on one row at a time. */
export interface RowReader {
  push(text: string): void;
  end(): void;
}

/** Rows of a table: it can be told where it goes on, after rows that another reader took. */
export interface TableReader extends RowReader {
  /** True where what it was given last is no whole row yet. */
  isWaiting(): boolean;
  /** The line that its next row begins on. */
  line(): number;
  goOnAt(line: number): void;
}

/** A row that goes on for this long is none: an unclosed quote, or a file of one endless line. */
const longestRow = 1_048_576;
const keptOfEndless = 200;

interface State {
  readonly delimiter: string;
  readonly onRow: (row: Row) => void;
  readonly zeros: ZeroBytes;
  /** How many zeros were taken off the start of `rest`. */
  dropped: number;
  /** The start of a line that is too long for a row and goes on; `null` where none is. */
  endless: string | null;
  /** What is not yet a whole row. */
  rest: string;
  source: string;
  /** The line that the next row begins on. */
  nextLine: number;
  line: number;
  cells: readonly string[];
  from: number;
  to: number;
}

/**
 * Rows of a table in text with one delimiter. Blank rows are passed over. `onRow` gets the same object for every row.
 * Lines are counted here: the parser's row numbers are not line numbers where a quoted cell holds a line end. Lines that
 * stand behind zeros are noted in `zeros`.
 */
export function csvRows(
  delimiter: string,
  onRow: (row: Row) => void,
  zeros: ZeroBytes = noZeroBytes(),
): TableReader {
  const state: State = {
    delimiter,
    onRow,
    zeros,
    dropped: 0,
    endless: null,
    rest: '',
    source: '',
    nextLine: 1,
    line: 1,
    cells: [],
    from: 0,
    to: 0,
  };
  const row: Row = {
    get line() {
      return state.line;
    },
    get isCut() {
      return state.source.charCodeAt(state.to - 1) !== 10;
    },
    cell: (column) => state.cells[column] ?? '',
    width: () => state.cells.length,
    text: () => withoutLineEnd(state.source.slice(state.from, state.to)),
    ownText: () => detached(row.text()),
    putText: (into) => into.add(row.text()),
    keep: (kept) => keepText(row, kept),
  };
  return {
    push(text) {
      state.rest += afterEndless(state, row, text);
      leaveZeros(state);
      take(state, row, false);
    },
    end() {
      if (state.endless !== null) emitEndless(state, row, '');
      state.rest = linesBehindZeros(state.rest, state.nextLine, state.dropped, zeros);
      take(state, row, true);
    },
    isWaiting: () => state.rest !== '' || state.endless !== null,
    line: () => state.nextLine,
    goOnAt(line) {
      state.nextLine = line;
    },
  };
}

interface Step {
  readonly data: readonly (readonly string[])[];
  readonly errors: readonly unknown[];
  readonly meta: { readonly cursor: number };
}

function take(state: State, row: Row, isLast: boolean): void {
  while (state.rest !== '' && parse(state, row, isLast)) takeLine(state, row, isLast);
}

/** Leaves out the zeros before whole lines, and all but one before a line that goes on. */
function leaveZeros(state: State): void {
  const { rest, nextLine, zeros } = state;
  if (!rest.includes('\0')) return;
  const end = rest.lastIndexOf('\n') + 1;
  if (end > 0) {
    state.rest = linesBehindZeros(rest.slice(0, end), nextLine, state.dropped, zeros) + rest.slice(end);
    state.dropped = 0;
  } else {
    const surplus = surplusZeros(rest);
    state.rest = rest.slice(surplus);
    state.dropped += surplus;
  }
}

/** Hands on the whole rows; true if it stopped before a row that is none. */
function parse(state: State, row: Row, isLast: boolean): boolean {
  state.source = state.rest;
  state.to = 0;
  let isBroken = false;
  const parser = new Papa.Parser({
    delimiter: state.delimiter,
    newline: '\n',
    step: ({ data, errors, meta: { cursor } }: Step) => {
      const found = data[0];
      if (found === undefined || cursor <= state.to || isBroken) return;
      isBroken = cursor - state.to > longestRow || (errors.length > 0 && goesOn(state, cursor));
      if (isBroken) parser.abort();
      else emit(state, row, found, cursor);
    },
  });
  parser.parse(state.source, 0, !isLast);
  state.rest = state.source.slice(state.to);
  return isBroken || state.rest.length > longestRow;
}

/** A quote that is never closed, or closed within a cell, takes in the lines after it. */
function goesOn({ source, to }: State, end: number): boolean {
  const newline = source.indexOf('\n', to);
  return newline >= 0 && newline < end - 1;
}

function emit(state: State, row: Row, found: readonly string[], end: number): void {
  state.from = state.to;
  state.to = end;
  state.line = state.nextLine;
  state.nextLine += linesIn(state.source, state.from, state.to);
  state.cells = withoutReturn(found);
  if (state.cells.length > 1 || state.cells[0] !== '') state.onRow(row);
}

/** Where quotes make no row, a line is one, its quotes taken as text. */
function takeLine(state: State, row: Row, isLast: boolean): void {
  const { rest } = state;
  const newline = rest.indexOf('\n');
  const line = newline < 0 ? rest : rest.slice(0, newline);
  if (line.length > longestRow) {
    state.endless = detached(line.slice(0, keptOfEndless));
    state.rest = '';
    if (newline >= 0 || isLast) emitEndless(state, row, newline < 0 ? '' : '\n');
    state.rest = newline < 0 ? '' : rest.slice(newline + 1);
    return;
  }
  state.source = rest;
  state.to = 0;
  emit(state, row, line.split(state.delimiter), newline < 0 ? rest.length : newline + 1);
  state.rest = rest.slice(state.to);
}

/** What follows an endless line; the line is one row, of which only the start is kept: it will be rejected for its columns. */
function afterEndless(state: State, row: Row, text: string): string {
  if (state.endless === null) return text;
  const newline = text.indexOf('\n');
  if (newline < 0) return '';
  emitEndless(state, row, '\n');
  return text.slice(newline + 1);
}

function emitEndless(state: State, row: Row, lineEnd: string): void {
  const start = state.endless ?? '';
  state.endless = null;
  state.source = start + lineEnd;
  state.to = 0;
  emit(state, row, [start], state.source.length);
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
