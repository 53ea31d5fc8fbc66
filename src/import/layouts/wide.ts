import { timeColumns, timeKeys, unitKeys } from './head.ts';
import type { TableColumns, TableImporter } from './importer.ts';
import { isBad, isQualityName } from './quality.ts';
import { dateCell, stampOf } from './row-stamp.ts';
import { tagReader } from './tag-names.ts';
import { wideColumns } from './wide-headers.ts';

const columns: TableColumns = {
  required: [],
  optional: [],
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
    const found = wideColumns(head.names, phrasebook);
    return found.length < leastColumns
      ? { fits: false, because: 'fewer than two columns are named by a unit and a parameter' }
      : { fits: true, because: `its header names units and parameters: ${sayTags(found)}` };
  },
  // What a cell says depends on the quality beside it.
  values: null,
  dateText: (head) => dateCell(timeColumns(head)),
  open(head, phrasebook, times) {
    const time = timeColumns(head);
    const found = wideColumns(head.names, phrasebook);
    const tagOf = tagReader(phrasebook);
    const used = new Set([
      ...time,
      ...found.flatMap((c) => [c.index, c.quality]),
      ...[...timeKeys, ...unitKeys, ...columns.passedOver].map((key) => head.column(key)),
    ]);
    const others = head.names
      .map((name, index) => ({ name, index, ...tagOf(name) }))
      .filter(({ name, index }) => name !== '' && !isQualityName(name) && !used.has(index));
    return (row, sink) => {
      if (row.width() < head.names.length)
        return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at === undefined) return;
      let isRead = false;
      for (const { unit, parameter, index, quality } of found) {
        if (quality >= 0 && isBad(row.cell(quality))) continue;
        isRead = true;
        sink.reading(at, unit, parameter, row.cell(index));
      }
      for (const { unit, parameter, index } of others) {
        const value = row.cell(index);
        if (value !== '') sink.reading(at, unit, parameter, value);
      }
      if (!isRead) sink.ignore();
    };
  },
};

function sayTags(found: readonly { readonly unit: string; readonly parameter: string }[]): string {
  const said = found.slice(0, 3).map(({ unit, parameter }) => `${parameter} of ${unit}`);
  return [...said, ...(found.length > 3 ? [`${found.length - 3} more`] : [])].join(', ');
}
