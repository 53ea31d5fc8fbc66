import type { Row } from '../bytes/row.ts';
import type { Beside } from '../changes/sink.ts';
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
  'new',
  'to',
  'after',
  'now',
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

/** Reads what stands beside the message of a row: its value; without one, what denies it, with the name of its column. */
export function messageValue(head: Head): (row: Row) => Pick<Beside, 'value' | 'denial'> {
  const own = messageValueColumn(head);
  const taken = takenIn(head);
  const others = head.names
    .map((name, index) => ({ name, index }))
    .filter((c) => c.index !== own && !taken.has(c.index) && !saysNothing(c.name));
  return (row) => {
    const value = own < 0 ? '' : row.cell(own).trim();
    if (value !== '') return { value };
    const denying = others.find(({ index }) => saidBeside(row.cell(index)) === 'denies');
    return denying === undefined ? {} : { denial: `${denying.name}=${row.cell(denying.index).trim()}` };
  };
}

/** Whether a column says nothing of what is so now: what was before, or that somebody acknowledged it. */
function saysNothing(name: string): boolean {
  return isAcknowledgement({ name }) || /^(?:old|previous|prior|last|from|before|was)\b/.test(folded(name));
}

function takenIn(head: Head): ReadonlySet<number> {
  const keys = [...timeKeys, ...unitKeys, 'message', 'severity', 'class', 'quality'] as const;
  return new Set([stateColumn(head), ...keys.map((key) => head.column(key))]);
}

/**
 * What the fields of a line say beside its message, as those of a row do, and which of them is its value. `isOpen` says whether nothing else
 * is known of a field.
 */
export function fieldsBeside(
  fields: ReadonlyMap<string, string>,
  isOpen: (name: string) => boolean,
): Pick<Beside, 'value' | 'denial'> & { readonly name?: string } {
  let denial: string | undefined;
  for (const [name, text] of fields) {
    const value = text.trim();
    if (value === '' || !isOpen(name)) continue;
    if (names.has(folded(name))) return { name, value };
    if (denial === undefined && !saysNothing(name) && saidBeside(value) === 'denies')
      denial = `${name}=${value}`;
  }
  return denial === undefined ? {} : { denial };
}
