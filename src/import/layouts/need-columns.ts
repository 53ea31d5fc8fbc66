import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { type Head, hasUnit, timeColumns } from './head.ts';
import type { Recognition, TableColumns } from './importer.ts';

/**
 * Whether the required columns are there, besides a time and a unit; if not, which are missing. With a phrasebook, the names of
 * parameters may say the unit.
 */
export function needColumns(
  head: Head,
  { required }: TableColumns,
  phrasebook: Phrasebook | null = null,
): Recognition {
  const missing = [
    ...(timeColumns(head).length > 0 ? [] : ['time']),
    ...(hasUnit(head, phrasebook) ? [] : ['unit']),
    ...required.filter((key) => head.column(key) < 0),
  ];
  return missing.length > 0
    ? { fits: false, because: `no column for ${missing.join(', ')}` }
    : {
        fits: true,
        because: `its header has columns for ${['time', ...(hasUnit(head, null) ? ['unit'] : []), ...required].join(', ')}`,
      };
}
