import type { Row } from '../bytes/row.ts';

/** The rows in which wordings that are not known first stand, as long as they are not too much text. */
export interface WordingRows {
  /** By their lines. */
  readonly rows: Map<number, string>;
  /** So many characters of such rows may still be kept. */
  room: number;
}

/** A million characters are more than a person looks at. Chosen here. */
const mostText = 1_000_000;

/** None is kept yet. */
export function noWordingRows(): WordingRows {
  return { rows: new Map(), room: mostText };
}

/** Keeps a row, once for all wordings that first stand in it. */
export function keepWordingRow(kept: WordingRows, row: Row): void {
  if (kept.room <= 0 || kept.rows.has(row.line)) return;
  const text = row.ownText();
  kept.room -= text.length;
  if (kept.room >= 0) kept.rows.set(row.line, text);
}
