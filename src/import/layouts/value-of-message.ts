import type { Row } from '../bytes/row.ts';
import { columnSpellings } from '../phrasebook/column-keys.ts';
import { folded } from '../phrasebook/plain-parameters.ts';
import { saidBeside } from '../phrasebook/value-beside.ts';
import { type Head, timeKeys, unitKeys } from './head.ts';
import { stateColumn } from './rule-columns.ts';
import { isAcknowledgement } from './state-column.ts';

/** What a column is called that says what became of the thing that a message names. Common practice, no source. */
const names: ReadonlySet<string> = new Set([
  ...columnSpellings('value'),
  'status',
  'new value',
  'new state',
  'current value',
  'current state',
  'result',
]);

/** The column of a journal that holds the values of its messages: that of the rule for the file, else the first that is named so; -1 without one. */
export function messageValueColumn(head: Head): number {
  if (head.rule?.columns.value !== undefined) return head.column('value');
  const taken = takenIn(head);
  return head.names.findIndex((name, index) => !taken.has(index) && names.has(folded(name)));
}

/**
 * Reads what stands beside the message of a row as its value. Where no column is for that, a cell that denies is given with the name of
 * its column: what it denies nobody can know, and the message must not be read as if it were not there.
 */
export function messageValue(head: Head): (row: Row) => string {
  const own = messageValueColumn(head);
  const taken = takenIn(head);
  const others = head.names
    .map((name, index) => ({ name, index }))
    .filter((c) => c.index !== own && !taken.has(c.index) && !isAcknowledgement(c));
  return (row) => {
    const value = own < 0 ? '' : row.cell(own).trim();
    if (value !== '') return value;
    const denying = others.find(({ index }) => saidBeside(row.cell(index)) === 'denies');
    return denying === undefined ? '' : `${denying.name}=${row.cell(denying.index).trim()}`;
  };
}

function takenIn(head: Head): ReadonlySet<number> {
  const keys = [...timeKeys, ...unitKeys, 'message', 'severity', 'class', 'quality'] as const;
  return new Set([stateColumn(head), ...keys.map((key) => head.column(key))]);
}

/**
 * The field that holds the value of the message of a line, and what it says; without one, as of a row, what denies, of no name. `isOpen`
 * says whether nothing else is known of a field.
 */
export function fieldBeside(
  fields: ReadonlyMap<string, string>,
  isOpen: (name: string) => boolean,
): { readonly name: string; readonly value: string } | null {
  let denying: { readonly name: string; readonly value: string } | null = null;
  for (const [name, value] of fields) {
    if (!isOpen(name) || value.trim() === '') continue;
    if (names.has(folded(name))) return { name, value: value.trim() };
    if (denying === null && !isAcknowledgement({ name }) && saidBeside(value) === 'denies')
      denying = { name: '', value: `${name}=${value.trim()}` };
  }
  return denying;
}
