import { columnsOf } from '../report/panel-fit.ts';
import type { Output, Screen } from './streams.ts';

/** Lines at the end of a terminal that are written over where they stand. */
export interface InPlace {
  /** Shows these lines in place of those before; each must be as wide as the screen at most. */
  draw(lines: readonly string[]): void;
  /** Takes the lines away, for something else to be written there. */
  clear(): void;
  /** Leaves the lines where they are and gives the cursor back; nothing is drawn any more. */
  end(): void;
}

const control = '\u001b[';
const toEnd = `${control}K`;
const below = `${control}J`;
const cursor = { hide: `${control}?25l`, show: `${control}?25h` } as const;

/** Draws at the cursor of a terminal, without taking the whole of it. */
export function inPlace(output: Pick<Output, 'write'>, screen: Screen): InPlace {
  let drawn: readonly string[] = [];
  let isOpen = true;
  // A terminal that became narrower has broken the lines that were drawn.
  const rowsDrawn = (): number =>
    drawn.reduce((sum, line) => sum + Math.max(1, Math.ceil(columnsOf(plain(line)) / screen.columns())), 0);
  const toStart = (): string => {
    const rows = Math.min(rowsDrawn(), screen.rows() - 1);
    return `\r${rows === 0 ? '' : `${control}${rows}A`}`;
  };
  return {
    draw(lines) {
      if (!isOpen) return;
      const text = lines.map((line) => `${line}${toEnd}\n`).join('');
      output.write(`${cursor.hide}${toStart()}${text}${below}`);
      drawn = lines;
    },
    clear() {
      if (!isOpen || drawn.length === 0) return;
      output.write(`${toStart()}${below}`);
      drawn = [];
    },
    end() {
      // The terminal may have shown there which key was pressed.
      if (isOpen) output.write(`\r${toEnd}${cursor.show}`);
      isOpen = false;
    },
  };
}

/** A line without what paints it. */
function plain(line: string): string {
  return line
    .split(control)
    .map((piece, index) => (index === 0 ? piece : piece.slice(piece.indexOf('m') + 1)))
    .join('');
}
