import type { Became } from '../../vocabulary.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { timeColumns } from './head.ts';
import type { Plan } from './recognise.ts';

const keysOf: Readonly<Record<string, readonly string[]>> = {
  readings: ['unit', 'pair', 'half', 'role', 'parameter', 'value'],
  snapshots: ['unit', 'pair', 'half', 'role', 'severity', 'class'],
  journal: ['unit', 'pair', 'half', 'role', 'message', 'severity', 'class'],
};

/** What each column of a table became: a key of its layout, or in snapshots a signal. Empty for a text. */
export function columnsOf({ head, importer, delimiter }: Plan, phrasebook: Phrasebook): readonly Became[] {
  if (delimiter === null) return [];
  const times = timeColumns(head);
  const keys = new Map((keysOf[importer.id] ?? []).map((key) => [head.column(key), key]));
  return head.names.map((name, index) => {
    const place = times.indexOf(index);
    if (place >= 0)
      return { name, meaning: times.length === 1 ? 'time' : (['date', 'clock'][place] ?? 'time') };
    const key = keys.get(index);
    const signal = importer.id === 'snapshots' ? parameterNamed(phrasebook, name)?.signal : undefined;
    return { name, meaning: key ?? signal ?? null };
  });
}
