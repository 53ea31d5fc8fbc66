import type { Row } from '../bytes/row.ts';
import type { ColumnKey } from '../phrasebook/column-keys.ts';
import { folded } from '../phrasebook/plain-parameters.ts';
import { type Head, timeKeys, unitKeys } from './head.ts';
import { qualityColumn as columnOfQualities, isBad, qualityReader } from './quality.ts';

/**
 * The column that says whether the condition of a row stands; -1 if there is none. "State" alone may be a value: it is a
 * state where the rule for the file says what its states mean.
 */
export function stateColumn(head: Head): number {
  const named = head.column('state');
  if (named >= 0 || head.rule?.states === undefined) return named;
  return head.names.findIndex((name) => ['state', 'status'].includes(folded(name)));
}

/** The column that says how good the values of a row are: that of the rule for the file, else the only one that is named so; -1 if there is none. */
export function qualityColumn(head: Head): number {
  if (isRuled(head)) return head.column('quality');
  const named = columnOfQualities(head);
  return others.some((key) => head.column(key) === named) ? -1 : named;
}

/** The same, only where a rule for the file says so: in a table of tags each value may have a column of its own for its quality. */
export function ruledQuality(head: Head): number {
  return isRuled(head) ? head.column('quality') : -1;
}

/** What a column of qualities is none of. */
const others: readonly ColumnKey[] = [...timeKeys, ...unitKeys, 'parameter', 'value', 'message'];

function isRuled({ rule }: Head): boolean {
  return rule?.columns.quality !== undefined || rule?.good !== undefined;
}

/** Whether a quality says that a value was observed; of a column that no rule speaks of only what is known to be bad says not. */
export function qualityTest(head: Head): (text: string) => boolean {
  return isRuled(head) ? qualityReader(head.rule?.good) : (text) => !isBad(text);
}

/** Reads the quality of a row where it says that the row was not observed; `null` where it was, or where no column says it. */
export function badQuality(head: Head, column = qualityColumn(head)): (row: Row) => string | null {
  if (column < 0) return () => null;
  const isGood = qualityTest(head);
  return (row) => {
    const text = row.cell(column);
    return isGood(text) ? null : text;
  };
}
