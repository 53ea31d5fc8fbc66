import type { RowReader } from './csv-rows.ts';
import { detached } from './decode.ts';
import { keepText, type Row } from './row.ts';
import { behindZeros, surplusZeros, type ZeroBytes } from './zero-bytes.ts';

/** What is longer is no line of a log: its start is kept. */
export const longestLine = 1_048_576;

/**
 * Lines of a text as rows of one cell; `onRow` gets the same object for every line. Ends with LF or CR LF. Lines that stand
 * behind zeros are noted in `zeros`.
 */
export function textLines(onRow: (row: Row) => void, zeros: ZeroBytes): RowReader {
  let rest = '';
  let dropped = 0;
  let line = 0;
  let current = '';
  let isCut = false;
  const row: Row = {
    get line() {
      return line;
    },
    get isCut() {
      return isCut;
    },
    cell: (column) => (column === 0 ? current : ''),
    width: () => 1,
    text: () => current,
    ownText: () => detached(row.text()),
    putText: (into) => into.add(row.text()),
    keep: (kept) => keepText(row, kept),
  };
  const emit = (text: string): void => {
    line += 1;
    const ended = text.endsWith('\r') ? text.slice(0, -1) : text;
    const whole = behindZeros(ended, line, dropped, zeros);
    dropped = 0;
    current = whole.length > longestLine ? whole.slice(0, longestLine) : whole;
    onRow(row);
  };
  return {
    push(text) {
      const lines = (rest + text).split('\n');
      rest = lines.pop() ?? '';
      for (const whole of lines) emit(whole);
      const surplus = surplusZeros(rest);
      rest = rest.slice(surplus);
      dropped += surplus;
      // What is longer than any line of a log is cut to its start, so that memory stays bounded.
      if (rest.length > longestLine) rest = rest.slice(0, longestLine);
    },
    end() {
      if (rest === '') return;
      isCut = true;
      emit(rest);
    },
  };
}
