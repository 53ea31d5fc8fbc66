import type { Recognition } from '../bytes/row.ts';
import { columnSpellings } from '../phrasebook/built-in-phrasebook.ts';
import type { FileRule } from '../phrasebook/phrasebook-rules.ts';
import { folded } from '../phrasebook/plain-parameters.ts';

/** The begin of a file: the header of a table, or the first lines of a text. */
export interface Head {
  /** Column names in their order; empty for a text. */
  readonly names: readonly string[];
  /** The first lines that are not empty. */
  readonly lines: readonly string[];
  readonly rule: FileRule | undefined;
  /** Index of the column for a key of the phrasebook; -1 if there is none. */
  column(key: string): number;
}

/** A head whose columns are found by the phrasebook's names first, else by plain-English spellings. */
export function headOf(names: readonly string[], lines: readonly string[], rule: FileRule | undefined): Head {
  const trimmed = names.map((name) => name.trim());
  const own: Readonly<Record<string, string | undefined>> = rule?.columns ?? {};
  const taken = new Set(Object.values(own));
  return {
    names: trimmed,
    lines,
    rule,
    column(key) {
      const named = own[key];
      if (named !== undefined) return trimmed.indexOf(named);
      const spellings = columnSpellings[key] ?? [key];
      return trimmed.findIndex((name) => !taken.has(name) && spellings.includes(folded(name)));
    },
  };
}

/** The instant of a row: one column, or a date and a clock. Empty if there is none. */
export function timeColumns(head: Head): readonly number[] {
  const date = head.column('date');
  const clock = head.column('clock');
  const time = head.column('time');
  if (head.rule?.columns.time === undefined && date >= 0 && (clock >= 0 || time >= 0))
    return [date, clock >= 0 ? clock : time];
  if (time >= 0) return [time];
  return date >= 0 ? [date] : [];
}

/** True if some column says which unit a row is about. */
export function hasUnit(head: Head): boolean {
  return head.column('unit') >= 0 || head.column('pair') >= 0;
}

/** Whether the named columns are there, besides a time and a unit; if not, which are missing. */
export function needColumns(head: Head, keys: readonly string[]): Recognition {
  const missing = [
    ...(timeColumns(head).length > 0 ? [] : ['time']),
    ...(hasUnit(head) ? [] : ['unit']),
    ...keys.filter((key) => head.column(key) < 0),
  ];
  return missing.length > 0
    ? { fits: false, because: `no column for ${missing.join(', ')}` }
    : { fits: true, because: `its header has columns for ${['time', 'unit', ...keys].join(', ')}` };
}
