import type { ImportedFile } from '../vocabulary.ts';

/** What was given and could not be read or understood, as far as it may speak of a pair. */
export interface Unread {
  /** The files of which no row could be used. */
  readonly leftOut: readonly string[];
  /** Rows between two instants that were not understood. */
  rowsBetween(from: number, to: number): number;
}

const minuteMs = 60_000;

/** `failed` are the places where a file could not be read at all: its name, with a line or not. Rows of a unit that is known to be of another pair do not count. */
export function unreadOf(files: readonly ImportedFile[], failed: readonly string[], pair: string): Unread {
  const useless = files.filter(
    ({ input: { rows } }) => rows.used + rows.unchanged === 0 && rows.unmatched + rows.rejected > 0,
  );
  const minutes = files.flatMap((f) =>
    f.streams.flatMap((s) => (s.subject.pair === '' || s.subject.pair === pair ? s.notUnderstood : [])),
  );
  return {
    leftOut: [...failed.map((place) => place.replace(/:\d+$/, '')), ...useless.map((f) => f.input.file)],
    rowsBetween: (from, to) =>
      minutes.reduce(
        (sum, minute) => (minute.from + minuteMs > from && minute.from <= to ? sum + minute.count : sum),
        0,
      ),
  };
}
