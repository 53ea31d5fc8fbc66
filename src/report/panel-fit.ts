import { terminal } from './escape.ts';

/** A part of a line, and how it is painted. */
export interface LinePart {
  readonly text: string;
  readonly as?: 'verdict' | 'critical' | 'warning';
}

/** Where a text was cut. Plain, since some terminals give other marks two columns. */
const mark = '...';

/**
 * Characters that a terminal draws two columns wide: East Asian Wide and Fullwidth, and pictographs. Source: Unicode Standard
 * Annex 11; the blocks that hold them, so that none is taken for narrower than it is.
 */
const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\ua960-\ua97c\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{16fe0}-\u{18dff}\u{1b000}-\u{1b2ff}\u{20000}-\u{3fffd}\p{Extended_Pictographic}]/u;

/** How many columns a text takes in a terminal, at most: what has no width of its own counts as one. */
export function columnsOf(text: string): number {
  let columns = 0;
  for (const character of text) columns += wide.test(character) ? 2 : 1;
  return columns;
}

/** A text of a log for one line of a terminal: no control reaches it, and a tab is one blank. */
export function inLine(text: string): string {
  return terminal(text).replaceAll('\t', ' ');
}

/** A text cut to so many columns; three dots stand for what is missing. */
export function cut(text: string, columns: number): string {
  if (columnsOf(text) <= columns) return text;
  const room = columns - mark.length;
  if (room <= 0) return mark.slice(0, Math.max(0, columns));
  let [kept, taken] = ['', 0];
  for (const character of text) {
    taken += columnsOf(character);
    if (taken > room) break;
    kept += character;
  }
  return kept + mark;
}

/** A text at exactly so many columns: cut, or filled with blanks. */
export function column(text: string, columns: number): string {
  const shown = cut(text, columns);
  return shown + ' '.repeat(Math.max(0, columns - columnsOf(shown)));
}

/** Parts of a line one after the other, cut to so many columns, each then painted. */
export function fitted(
  parts: readonly LinePart[],
  columns: number,
  paint: (text: string, as: 'verdict' | 'critical' | 'warning') => string,
): string {
  let room = columns;
  return parts
    .map(({ text, as }) => {
      const shown = cut(text, room);
      room -= columnsOf(shown);
      return as === undefined || shown === '' ? shown : paint(shown, as);
    })
    .join('')
    .trimEnd();
}
