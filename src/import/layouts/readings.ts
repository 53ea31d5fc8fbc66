import { hasUnit, timeColumns } from './head.ts';
import type { TableColumns, TableImporter } from './importer.ts';
import { needColumns } from './need-columns.ts';
import { dateCell, stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';
import { badQuality } from './rule-columns.ts';
import { tagReader } from './tag-names.ts';

const columns: TableColumns = {
  required: ['parameter', 'value'],
  optional: ['quality'],
  passedOver: [],
  others: 'unknown',
};

/** One row per reading: time, unit, parameter, value. */
export const readings: TableImporter = {
  id: 'readings',
  title: 'readings',
  summary: 'CSV, one row per reading: time, unit, parameter, value',
  ruleKeys: ['columns'],
  shape: 'table',
  columns,
  recognise: (head, phrasebook) => needColumns(head, columns, phrasebook),
  values: (head) => [head.column('value')],
  dateText: (head) => dateCell(timeColumns(head)),
  open(head, phrasebook, times) {
    const time = timeColumns(head);
    const units = unitReader(head);
    // Without a column of units the name of a parameter says of which unit it is: `RO1-A.Role`.
    const tagOf = hasUnit(head, phrasebook) ? null : tagReader(phrasebook);
    const parameter = head.column('parameter');
    const value = head.column('value');
    const badOf = badQuality(head);
    return (row, sink) => {
      if (row.width() <= Math.max(parameter, value))
        return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at === undefined) return;
      // A value that its quality says is bad was not read.
      const bad = badOf(row);
      if (bad !== null) return sink.unread(at, bad);
      if (tagOf === null)
        return sink.reading(at, units.unit(row), row.cell(parameter), row.cell(value), units.parts(row));
      const tag = tagOf(row.cell(parameter));
      sink.reading(at, tag.unit, tag.parameter, row.cell(value));
    };
  },
};
