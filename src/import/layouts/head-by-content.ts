import type { ColumnKey } from '../phrasebook/column-keys.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { clockBeside } from './clock-beside.ts';
import { sampleColumns } from './column-content.ts';
import { type Head, headOf, timeColumns, unitKeys } from './head.ts';
import type { Importer } from './importer.ts';
import { stateColumn } from './state-column.ts';

/** A head with what its first rows add to the names of its columns, and why. */
interface HeadByContent {
  readonly head: Head;
  readonly reasons: readonly string[];
}

/**
 * What the rows of a table say of columns that their names do not: a clock beside the date, and in a journal whether the condition
 * of each row stands. Throws InputError where the clock cannot be told.
 */
export function headByContent(
  file: string,
  importer: Importer,
  head: Head,
  rows: readonly (readonly string[])[],
  phrasebook: Phrasebook,
): HeadByContent {
  const timed = clockBeside(file, head, rows, phrasebook);
  const found = timed?.head ?? head;
  const stated = importer.id === 'journal' ? stateBeside(found, rows) : null;
  return {
    head: stated?.head ?? found,
    reasons: [timed, stated].flatMap((added) => (added === null ? [] : [added.because])),
  };
}

/** What a column of states is none of. */
const otherKeys: readonly ColumnKey[] = [...unitKeys, 'message', 'severity', 'class'];

function stateBeside(
  head: Head,
  rows: readonly (readonly string[])[],
): { readonly head: Head; readonly because: string } | null {
  if (head.column('state') >= 0) return null;
  const taken = new Set([...timeColumns(head), ...otherKeys.map((key) => head.column(key))]);
  const state = stateColumn(sampleColumns(head.names, rows).filter((c) => !taken.has(c.index)));
  if (state === undefined || state.name === '') return null;
  const rule = head.rule ?? { match: '', layout: undefined, columns: {}, line: undefined };
  const columns = { ...rule.columns, state: state.name };
  return {
    head: headOf(head.names, head.lines, { ...rule, columns }),
    because: `by its contents "${state.name}" was taken as the state of each condition`,
  };
}
