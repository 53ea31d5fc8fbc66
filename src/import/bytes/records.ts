import { detached } from './decode.ts';
import { keepText, type Row } from './row.ts';
import { longestLine } from './text-lines.ts';

/** Puts the lines of a text together to records. */
export interface Records {
  /** Takes the next line. */
  add(row: Row): void;
  /** No line follows. */
  end(): void;
  /** Hands on the record that is not yet followed by another, though lines of it may follow. */
  settle(): void;
  /** True once a line came that belongs to a record that was handed on so. */
  wentOn(): boolean;
  /** How many lines began a record. */
  count(): number;
}

/** A record as its lines come. */
interface Begun {
  line: number;
  /** Its first line as read: that is what evidence cites. */
  first: string;
  /** Its lines, blanks around them and blank lines left out, up to as much as a line may hold. */
  parts: string[];
  length: number;
  /** None of the lines began it: it began in another file. */
  isHeadless: boolean;
  isCut: boolean;
}

/**
 * Lines of a text as records: one begins with each line that `begins`, and those that follow belong to it, joined by one
 * blank, since in a pattern `.` and `$` stop at a line end. `onRow` gets the same object for every record: its cell is the
 * record, its text the first line. Lines before the first record are a row without a cell.
 */
export function records(begins: (line: string) => boolean, onRow: (row: Row) => void): Records {
  let begun: Begun | null = null;
  let whole = '';
  let count = 0;
  let isSettled = false;
  let wentOn = false;
  const row: Row = {
    get line() {
      return begun?.line ?? 0;
    },
    get isCut() {
      return begun?.isCut ?? false;
    },
    cell: (column) => (column === 0 ? whole : ''),
    width: () => (begun?.isHeadless === true ? 0 : 1),
    text: () => begun?.first ?? '',
    ownText: () => detached(row.text()),
    putText: (into) => into.add(row.text()),
    keep: (kept) => keepText(row, kept),
  };
  const emit = (): void => {
    if (begun === null) return;
    whole = begun.isHeadless ? '' : begun.parts.join(' ');
    onRow(row);
    begun = null;
  };
  return {
    add({ line, isCut, text }) {
      const first = text();
      const isBegin = begins(first);
      if (!isBegin && first.trim() === '') return;
      if (isBegin) {
        emit();
        count += 1;
      }
      wentOn ||= isSettled && !isBegin;
      isSettled = false;
      begun ??= { line, first, parts: [], length: 0, isHeadless: !isBegin, isCut };
      begun.isCut = isCut;
      addPart(begun, isBegin ? first.trimEnd() : first.trim());
    },
    end: emit,
    settle() {
      isSettled ||= begun !== null;
      emit();
    },
    wentOn: () => wentOn,
    count: () => count,
  };
}

function addPart(begun: Begun, part: string): void {
  if (begun.isHeadless || begun.length >= longestLine) return;
  const room = longestLine - begun.length;
  begun.parts.push(part.length > room ? part.slice(0, room) : part);
  begun.length += part.length + 1;
}
