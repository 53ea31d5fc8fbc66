import type { Became } from '../../vocabulary.ts';
import type { ColumnKey } from '../phrasebook/column-keys.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { timeColumns, unitKeys } from './head.ts';
import type { Plan } from './recognise.ts';
import { tagNamed } from './tag-names.ts';

/** What each column of a table became: a key of its layout, or a signal where columns are parameters. Empty for a text. */
export function columnsOf({ head, importer }: Plan, phrasebook: Phrasebook): readonly Became[] {
  if (importer.shape === 'text') return [];
  const times = timeColumns(head);
  const stateKeys: readonly ColumnKey[] = importer.id === 'journal' ? ['state'] : [];
  const { required, passedOver, others } = importer.columns;
  const keys = new Map(
    [...unitKeys, ...required, ...passedOver, ...stateKeys].map((key) => [head.column(key), key]),
  );
  return head.names.map((name, index) => {
    const place = times.indexOf(index);
    if (place >= 0)
      return { name, meaning: times.length === 1 ? 'time' : (['date', 'clock'][place] ?? 'time') };
    const parameter = others === 'tags' ? tagNamed(phrasebook, name)?.parameter : name;
    const signal =
      others === 'unknown' || parameter === undefined
        ? undefined
        : parameterNamed(phrasebook, parameter)?.signal;
    return { name, meaning: keys.get(index) ?? signal ?? null };
  });
}
