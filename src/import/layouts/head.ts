import { type ColumnKey, columnSpellings } from '../phrasebook/column-keys.ts';
import type { FileRule, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { folded, wordsApart } from '../phrasebook/plain-parameters.ts';

/** The start of a file: the header of a table, or the first lines of a text. */
export interface Head {
  /** Column names in their order; empty for a text. */
  readonly names: readonly string[];
  /** The first lines that are not empty. */
  readonly lines: readonly string[];
  readonly rule: FileRule | undefined;
  /** Index of the column for a key of the phrasebook; -1 if there is none. */
  column(key: ColumnKey): number;
}

/** A head whose columns are found by the phrasebook's names first, else by plain-English spellings. */
export function headOf(names: readonly string[], lines: readonly string[], rule: FileRule | undefined): Head {
  const trimmed = names.map((name) => name.trim());
  const own = rule?.columns ?? {};
  const taken = new Set(
    Object.values(own).flatMap((name) => (name === undefined ? [] : [placeOf(trimmed, name)])),
  );
  // Compared by many keys, and of many rows that may be the header.
  let compared: readonly (readonly string[])[] | undefined;
  return {
    names: trimmed,
    lines,
    rule,
    column(key) {
      const named = own[key];
      if (named !== undefined) return placeOf(trimmed, named);
      const spellings = columnSpellings(key);
      compared ??= trimmed.map((name, place) =>
        taken.has(place) ? [] : [folded(name), folded(wordsApart(name))],
      );
      const known = compared;
      const placeOfForm = (form: number): number =>
        known.findIndex((forms) => spellings.includes(forms[form] ?? ''));
      const whole = placeOfForm(0);
      return whole >= 0 ? whole : placeOfForm(1);
    },
  };
}

/** The index of a column by its name or, as `#3`, by its number; -1 if there is none. */
function placeOf(names: readonly string[], column: string): number {
  const named = names.indexOf(column);
  const number = named >= 0 ? null : columnNumber(column);
  return number === null || number > names.length ? named : number - 1;
}

/** Which column, counted from 1, a text such as `#3` means; `null` for a name. */
export function columnNumber(column: string): number | null {
  return /^#[1-9]\d{0,5}$/.test(column) ? Number(column.slice(1)) : null;
}

/** The columns in which a table of any layout says when and of which unit. */
export const timeKeys: readonly ColumnKey[] = ['time', 'date', 'clock'];
export const unitKeys: readonly ColumnKey[] = ['unit', 'pair', 'half', 'role'];

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

/** True if some column says which unit a row is about, or the names of parameters do, or the rule for the file. */
export function hasUnit(head: Head, phrasebook: Phrasebook | null): boolean {
  const named = phrasebook?.parameterPatterns?.nameUnits === true;
  return named || head.rule?.of !== undefined || head.column('unit') >= 0 || head.column('pair') >= 0;
}
