import type { StaffRow } from '../charts/staff.ts';

/** A word and the instant it belongs to. */
export interface StaffWord {
  readonly time: number;
  readonly text: string;
}

/** Distances from the line, in those of the two lines; beneath it light and bracket come first. */
const nearestAbove = 0.4;
const nearestBeneath = 0.62;
const apart = 0.25;
const levels = 4;
/** Room that a letter takes, in units of the drawing. */
export const unitsPerLetter = 7.2;

/**
 * Places the words of a line, each right of a leader that rises from its tick, in up to four rows away from the line
 * (`away` is 1 for above, -1 for beneath). From the right, each takes the nearest row in which neither another word nor
 * a leader is in its way; one that finds none, or would run past `end`, is left out. `perUnit` is milliseconds per unit
 * of the drawing.
 */
export function wordRows(
  words: readonly StaffWord[],
  line: number,
  away: 1 | -1,
  perUnit: number,
  end: number,
): readonly StaffRow[] {
  // Where the word or leader furthest left begins that a word of this row would meet.
  const free: number[] = Array.from({ length: levels }, () => end);
  return words
    .toSorted((a, b) => b.time - a.time)
    .flatMap(({ time, text }) => {
      const right = time + (text.length * unitsPerLetter + 6) * perUnit;
      const level = free.findIndex((begin) => right <= begin);
      if (level < 0) return [];
      // Its leader passes all rows up to its own.
      free.fill(time, 0, level + 1);
      const y = line + away * ((away === 1 ? nearestAbove : nearestBeneath) + level * apart);
      return [
        { mark: 'leader', x: time, x2: time, y: line + away * 0.2, y2: y + away * 0.06, text: '' },
        { mark: 'word', x: time, x2: time, y, y2: y, text },
      ] as const;
    });
}
