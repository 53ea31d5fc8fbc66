import { detached } from '../bytes/decode.ts';
import { keepText, type Row } from '../bytes/row.ts';

/** Puts rows that are out of order in the order of time before they are handed on. */
export interface RowSorter {
  add(row: Row): void;
  /** Hands on all that waits, though more may follow. */
  settle(): void;
  /** True once a row came that belongs before one that was handed on so: whoever sorts all of them at once comes to something else. */
  isLate(): boolean;
  end(): void;
  /** The lines of steps that are none: a second export begins there and goes over the same time. */
  secondExports(): ReadonlySet<number>;
}

interface Kept {
  readonly at: number;
  readonly order: number;
  readonly row: Row;
}

/**
 * Sorts rows by their instant; rows of one instant, and those without one, keep their place. At most `window` rows wait: a
 * row that is further out of order comes late, and the memory stays bounded. Nothing is sorted across a step of the clock,
 * unless its first row was read before: then a second export goes over the same time.
 */
export function rowSorter(
  instantOf: (row: Row) => number | undefined,
  window: number,
  steps: ReadonlySet<number>,
  onRow: (row: Row) => void,
): RowSorter {
  let waiting: Kept[] = [];
  let count = 0;
  const seconds = new Set<number>();
  let last = Number.NEGATIVE_INFINITY;
  let settledTo = Number.NEGATIVE_INFINITY;
  let isLate = false;
  const release = (some: number): void => {
    waiting.sort((a, b) => a.at - b.at || a.order - b.order);
    for (const { row } of waiting.slice(0, some)) onRow(row);
    waiting = waiting.slice(some);
  };
  return {
    add(row) {
      if (steps.has(row.line)) {
        if (wasRead(waiting, row)) seconds.add(row.line);
        else release(waiting.length);
      }
      last = instantOf(row) ?? last;
      isLate ||= last < settledTo;
      waiting.push({ at: last, order: count, row: copyOf(row) });
      count += 1;
      if (waiting.length >= window) release(Math.floor(window / 2));
    },
    settle() {
      for (const { at } of waiting) settledTo = Math.max(settledTo, at);
      release(waiting.length);
    },
    isLate: () => isLate,
    end: () => release(waiting.length),
    secondExports: () => seconds,
  };
}

function wasRead(waiting: readonly Kept[], row: Row): boolean {
  const text = row.text();
  return waiting.some((kept) => kept.row.text() === text);
}

/** A row of its own: the reader uses one object for all. */
function copyOf(row: Row): Row {
  const cells = Array.from({ length: row.width() }, (_, index) => row.cell(index));
  const text = row.text();
  const copy: Row = {
    line: row.line,
    isCut: row.isCut,
    cell: (column) => cells[column] ?? '',
    width: () => cells.length,
    text: () => text,
    ownText: () => detached(text),
    putText: (into) => into.add(text),
    keep: (kept) => keepText(copy, kept),
  };
  return copy;
}
