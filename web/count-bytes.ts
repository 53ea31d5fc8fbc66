import type { GivenStore } from './given-store.ts';
import type { Tell } from './read-from.ts';

/** Tells how much of each file was read so far. */
export interface ByteCount {
  /** The reading of a file begins. */
  begin(file: number): void;
  /** How many rows of that file were read. */
  rows(count: number): void;
  end(): void;
}

/** Counts what is read of the files of a store, until it ends. */
export function countBytes(store: GivenStore, tell: Tell): ByteCount {
  const bytes = new Map<number, number>();
  const rows = new Map<number, number>();
  let current: number | null = null;
  const say = (file: number): void =>
    tell({ kind: 'bytes', file, bytes: bytes.get(file) ?? 0, rows: rows.get(file) ?? 0 });
  store.onBytes = (file, count) => void bytes.set(file, (bytes.get(file) ?? 0) + count);
  return {
    begin(file) {
      current = file;
      tell({ kind: 'begin', file });
    },
    rows(count) {
      if (current === null) return;
      rows.set(current, Math.max(count, rows.get(current) ?? 0));
      say(current);
    },
    end() {
      store.onBytes = () => undefined;
    },
  };
}
