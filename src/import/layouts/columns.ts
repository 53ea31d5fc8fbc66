import type { Became } from '../../vocabulary.ts';
import type { ColumnKey } from '../phrasebook/column-keys.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { timeColumns, unitKeys } from './head.ts';
import type { Plan } from './recognise.ts';
import { qualityColumn, stateColumn } from './rule-columns.ts';
import { tagNamed } from './tag-names.ts';
import { valueColumns } from './value-columns.ts';
import { messageValueColumn } from './value-of-message.ts';

/** What each column of a table became: a key of its layout, or a signal where columns are parameters. Empty for a text. */
export function columnsOf({ head, importer }: Plan, phrasebook: Phrasebook): readonly Became[] {
  if (importer.shape === 'text') return [];
  const times = timeColumns(head);
  const { required, optional, passedOver, others } = importer.columns;
  const parameters = new Map(
    others === 'parameters'
      ? valueColumns(head, phrasebook, passedOver).columns.map((column) => [column.index, column.parameter])
      : [],
  );
  const keys = new Map<number, ColumnKey>();
  for (const key of [...unitKeys, ...required, ...passedOver]) keys.set(head.column(key), key);
  if (optional.includes('value')) keys.set(messageValueColumn(head), 'value');
  if (optional.includes('state')) keys.set(stateColumn(head), 'state');
  if (optional.includes('ended')) keys.set(head.column('ended'), 'ended');
  if (optional.includes('quality')) keys.set(qualityColumn(head), 'quality');
  return head.names.map((name, index) => {
    const place = times.indexOf(index);
    if (place >= 0)
      return { name, meaning: times.length === 1 ? 'time' : (['date', 'clock'][place] ?? 'time') };
    const parameter = others === 'tags' ? tagNamed(phrasebook, name)?.parameter : parameters.get(index);
    const signal = parameter === undefined ? undefined : parameterNamed(phrasebook, parameter)?.signal;
    return { name, meaning: keys.get(index) ?? signal ?? null };
  });
}
