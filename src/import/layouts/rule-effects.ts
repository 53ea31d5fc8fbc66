import type { Notice, StreamPoint } from '../../vocabulary.ts';
import { InputError } from '../bytes/input-error.ts';
import type { ColumnKey } from '../phrasebook/column-keys.ts';
import type { FileRule, UsedRules } from '../phrasebook/phrasebook-rules.ts';
import { timeColumns, timeKeys, unitKeys } from './head.ts';
import type { TableImporter } from './importer.ts';
import type { Plan } from './recognise.ts';
import { qualityColumn, stateColumn } from './rule-columns.ts';
import { messageValueColumn } from './value-of-message.ts';

/** What is noted of a rule for files beside its place: a file was read by it, so that its keys had their chance. */
export function readBy(place: string): string {
  return `${place} read`;
}

/** Columns that change what a row says: rows must not be read as if they were not named. */
const decisive = ['state', 'quality', 'ended'] as const;

/**
 * Notes which keys of the rule for a file have an effect on it. Throws InputError where the rule names a column of states or of
 * qualities that the table does not have.
 */
export function noteEffects(name: string, plan: Plan, rule: FileRule | undefined, used: UsedRules): void {
  if (rule === undefined) return;
  const missing = decisive.find((key) => rule.columns[key] !== undefined && plan.head.column(key) < 0);
  if (missing !== undefined && plan.importer.shape === 'table')
    throw new InputError(
      name,
      `the phrasebook's ${rule.place}.columns.${missing} is "${rule.columns[missing]}", and its header has no such column.`,
      `Name one of ${nameFew(plan.head.names)}, or remove the key.`,
    );
  if (rule.place === undefined || rule.place === null) return;
  used.add(readBy(rule.place));
  for (const key of keysOf(plan)) used.add(`${rule.place}.${key}`);
}

const mostNamed = 12;

function nameFew(names: readonly string[]): string {
  const more = names.length - mostNamed;
  return `${names.slice(0, mostNamed).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** The keys that have an effect on a file that is read so. */
function keysOf({ importer, head }: Plan): readonly string[] {
  // Fields of a line are not known before they are read.
  if (importer.shape === 'text')
    return importer.id === 'lines' ? ['line', ...Object.keys(head.rule?.columns ?? {}).map(column)] : [];
  return columnsRead(importer, head).map(column);
}

function column(key: string): string {
  return `columns.${key}`;
}

function columnsRead({ columns }: TableImporter, head: Plan['head']): readonly ColumnKey[] {
  const { required, optional, passedOver } = columns;
  const named = [...timesRead(head), ...unitKeys, ...required, ...passedOver].filter(
    (k) => head.column(k) >= 0,
  );
  const isRead = {
    state: stateColumn(head) >= 0,
    quality: qualityColumn(head) >= 0,
    value: messageValueColumn(head) >= 0,
    ended: head.column('ended') >= 0,
  };
  return [
    ...named,
    ...([...decisive, 'value'] as const).filter((key) => optional.includes(key) && isRead[key]),
  ];
}

const tables: readonly { readonly key: 'states' | 'good'; readonly needs: ColumnKey }[] = [
  { key: 'states', needs: 'state' },
  { key: 'good', needs: 'quality' },
];

/** Keys that say what rows mean and have no effect on this file, since the column that they are for is not read: a notice each. */
export function idleKeys(
  file: string,
  { importer, head }: Plan,
  first: StreamPoint | undefined,
): readonly Notice[] {
  const { rule } = head;
  const read: readonly string[] =
    importer.shape === 'table' ? columnsRead(importer, head) : Object.keys(rule?.columns ?? {});
  return tables.flatMap(({ key, needs }) => {
    if (rule?.[key] === undefined || read.includes(needs)) return [];
    const what = `The phrasebook's ${rule.place}.${key} has no effect: as ${importer.id} the file has no column that is read as ${needs}.`;
    const fix = `Name the column under ${rule.place}.columns.${needs}, or remove ${key}.`;
    const line = { file, line: first?.line ?? 1, text: first?.text ?? '' };
    return [{ id: 'unused-rules', what, fix, count: 1, from: null, to: null, lines: [line] }];
  });
}

/** Of a time, a date and a clock those that are read. */
function timesRead(head: Plan['head']): readonly ColumnKey[] {
  const columns = timeColumns(head);
  return timeKeys.filter((key) => columns.includes(head.column(key)));
}
