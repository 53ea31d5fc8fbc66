import { type KeptRow, keepText, type Row, type RowBytes } from '../bytes/row.ts';

/** One row that is still bytes; it becomes text where that is asked for. The same object stands for every row. */
export interface ByteRow extends Row {
  /** The row is now these bytes, its line end with them. */
  set(bytes: Uint8Array, from: number, to: number, line: number): void;
  isBlank(): boolean;
  /** The bytes are about to go: rows that were kept become text. */
  flush(): void;
}

/** A row with one delimiter and no quotes. */
export function byteRow(delimiter: number, decode: (bytes: Uint8Array) => string): ByteRow {
  const separator = String.fromCharCode(delimiter);
  let bytes: Uint8Array = new Uint8Array(0);
  let [from, to, line] = [0, 0, 0];
  let cells: readonly string[] | null = null;
  let kept: KeptRow[] = [];
  let last: string | null = null;
  const held = heldRows((start, end) => decode(bytes.subarray(start, beforeLineEnd(bytes, start, end))));
  const cellsNow = (): readonly string[] => (cells ??= split(decode(bytes.subarray(from, to)), separator));
  const row: ByteRow = {
    get line() {
      return line;
    },
    isCut: false,
    cell: (column) => cellsNow()[column] ?? '',
    width: () => cellsNow().length,
    text: () => last ?? held.text(from, to),
    ownText: () => last ?? held.text(from, to),
    putText(into) {
      if (last !== null || !into.addAscii(bytes, from, beforeLineEnd(bytes, from, to))) into.add(row.text());
    },
    keep(one) {
      if (one.bytes !== held) kept.push(one);
      one.bytes = held;
      one.from = from;
      one.to = to;
    },
    set(chunk, start, end, at) {
      if (chunk !== bytes) {
        row.flush();
        bytes = chunk;
      }
      from = start;
      to = end;
      line = at;
      cells = null;
      last = null;
    },
    isBlank: () => to - from === 1 || (to - from === 2 && bytes[from] === 13),
    flush() {
      for (const one of kept) if (one.bytes === held) becomeText(one, held);
      kept = [];
      // The row that was taken last may be asked for when its chunk is long gone.
      if (to > from) last ??= held.text(from, to);
      held.forget();
    },
  };
  return row;
}

/** Rows as text; all units of a wide row keep that row, and it becomes text once, until the bytes are others. */
function heldRows(textOf: (from: number, to: number) => string): RowBytes & { forget(): void } {
  let last: { readonly from: number; readonly to: number; readonly text: string } | null = null;
  return {
    text(from, to) {
      if (last?.from !== from || last.to !== to) last = { from, to, text: textOf(from, to) };
      return last.text;
    },
    forget() {
      last = null;
    },
  };
}

function becomeText(kept: KeptRow, held: RowBytes): void {
  keepText({ text: () => held.text(kept.from, kept.to) }, kept);
}

/** The cells of a line; a carriage return before its line feed is no part of the last one. */
function split(text: string, separator: string): readonly string[] {
  const line = text.endsWith('\r\n') ? text.slice(0, -2) : text.slice(0, -1);
  return line.split(separator);
}

/** Where a row ends without its line end. */
function beforeLineEnd(bytes: Uint8Array, from: number, to: number): number {
  let end = to;
  while (end > from && (bytes[end - 1] === 10 || bytes[end - 1] === 13)) end -= 1;
  return end;
}
