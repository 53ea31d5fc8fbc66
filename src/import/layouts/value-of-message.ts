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

/** Reads what stands beside the message of a row: its value, and what another column says against it. */
export function messageValue(head: Head): (row: Row) => Pick<Beside, 'value' | 'against'> {
  const own = messageValueColumn(head);
  const taken = takenIn(head);
  const others = head.names
    .map((name, index) => ({ name, index }))
    .filter((c) => c.index !== own && !taken.has(c.index) && !saysNothing(c.name));
  return (row) => {
    const value = own < 0 ? '' : row.cell(own).trim();
    for (const { name, index } of others) {
      const against = saidAgainst(name, row.cell(index), value);
      if (against !== undefined) return { value, against };
    }
    return { value };
  };
}

/** What a text under another name says against a message: beside a value only that it was not done. */
function saidAgainst(name: string, text: string, value: string): Beside['against'] {
  const says = saidBeside(text);
  return says === 'undoes' || (says === 'denies' && value === '')
    ? { says, text: `${name}=${text.trim()}` }
    : undefined;
}

const endNames: ReadonlySet<string> = new Set(columnSpellings('ended'));

/** The same of a field of a line. One that says when the condition ended is not read: that it stood is not all that there is to say. */
function saidInField(name: string, text: string, value: string): Beside['against'] {
  return endNames.has(folded(name)) && /\d/.test(text)
    ? { says: 'undoes', text: `${name}=${text.trim()}` }
    : saidAgainst(name, text, value);
}

/** Whether a column says nothing of what is so now: what was before, or that somebody acknowledged it. */
function saysNothing(name: string): boolean {
  return isAcknowledgement({ name }) || /^(?:old|previous|prior|last|from|before|was)\b/.test(folded(name));
}

function takenIn(head: Head): ReadonlySet<number> {
  const keys = [...timeKeys, ...unitKeys, 'message', 'severity', 'class', 'quality', 'ended'] as const;
  return new Set([stateColumn(head), ...keys.map((key) => head.column(key))]);
}

/**
 * What the fields of a line say beside its message, as those of a row do, and which of them is its value. `isOpen` says whether nothing else
 * is known of a field.
 */
export function fieldsBeside(
  fields: ReadonlyMap<string, string>,
  isOpen: (name: string) => boolean,
): Pick<Beside, 'value' | 'against'> & { readonly name?: string } {
  const open = [...fields].filter(([name, text]) => text.trim() !== '' && isOpen(name));
  const own = open.find(([name]) => names.has(folded(name)));
  const value = own?.[1].trim() ?? '';
  for (const [name, text] of open) {
    const against = name === own?.[0] || saysNothing(name) ? undefined : saidInField(name, text, value);
    if (against !== undefined) return own === undefined ? { against } : { name: own[0], value, against };
  }
  return own === undefined ? {} : { name: own[0], value };
}
