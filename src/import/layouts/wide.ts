import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { type Head, timeColumns } from './head.ts';
import type { TableColumns, TableImporter } from './importer.ts';
import { type Polled, polledRows, polledValues } from './polled-rows.ts';
import { dateCell } from './row-stamp.ts';
import { ruledQuality } from './rule-columns.ts';
import { tagColumns, type ValueColumn } from './value-columns.ts';

const columns: TableColumns = {
  required: [],
  optional: ['quality'],
  passedOver: ['severity', 'class'],
  others: 'tags',
};
const leastColumns = 2;

/** One row per instant: a time, and a column per unit and parameter, `RO1-A.Role`. */
export const wide: TableImporter = {
  id: 'wide',
  title: 'wide',
  summary: 'CSV, one row per instant, a column per unit and parameter: RO1-A.Role',
  ruleKeys: ['columns'],
  shape: 'table',
  columns,
  recognise(head, phrasebook) {
    if (timeColumns(head).length === 0) return { fits: false, because: 'no column for time' };
    const { columns: found } = tagColumns(head, phrasebook, columns.passedOver);
    return found.length < leastColumns
      ? { fits: false, because: 'fewer than two column names are a unit and a parameter' }
      : { fits: true, because: `its header names units and parameters: ${sayTags(found)}` };
  },
  values: (head, phrasebook) => polledValues(polledIn(head, phrasebook)),
  dateText: (head) => dateCell(timeColumns(head)),
  open: (head, phrasebook, times) => polledRows(head, polledIn(head, phrasebook), times),
};

function polledIn(head: Head, phrasebook: Phrasebook): Polled {
  return {
    role: -1,
    ...tagColumns(head, phrasebook, columns.passedOver),
    quality: ruledQuality(head),
  };
}

function sayTags(found: readonly ValueColumn[]): string {
  const said = found.slice(0, 3).map(({ says, parameter }) => `${parameter} of ${says?.unit ?? ''}`);
  return [...said, ...(found.length > 3 ? [`${found.length - 3} more`] : [])].join(', ');
}
