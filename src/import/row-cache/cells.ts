/** The cells of one line: where each begins and ends, the line end left out. */
export interface Cells {
  count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

const [lineFeed, carriageReturn, quote] = [10, 13, 34];
const mostCells = 1024;

/** No cells yet. */
export function noCells(): Cells {
  return { count: 0, from: new Int32Array(mostCells), to: new Int32Array(mostCells) };
}

/** Finds the cells of the line at `at`; gives where the next line begins, -1 if the line holds a quote or too many cells. */
export function findCells(bytes: Uint8Array, at: number, ends: Uint8Array, cells: Cells): number {
  let from = at;
  cells.count = 0;
  for (let index = at; ; index += 1) {
    const byte = bytes[index] ?? lineFeed;
    if (ends[byte] === 0) continue;
    if (byte === quote || cells.count >= mostCells) return -1;
    const isReturn = byte === lineFeed && index > from && bytes[index - 1] === carriageReturn;
    cells.from[cells.count] = from;
    cells.to[cells.count] = isReturn ? index - 1 : index;
    cells.count += 1;
    from = index + 1;
    if (byte === lineFeed) return from;
  }
}

/** For every byte whether a cell may end there. */
export function endsOfCells(delimiter: number): Uint8Array {
  const ends = new Uint8Array(256);
  for (const byte of [delimiter, lineFeed, quote]) ends[byte] = 1;
  return ends;
}
