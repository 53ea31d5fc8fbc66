import { timeColumns } from './head.ts';
import type { TableColumns, TableImporter } from './importer.ts';
import { needColumns } from './need-columns.ts';
import { dateCell, stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';
import { badQuality } from './rule-columns.ts';

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
  open(head, _phrasebook, times) {
    const time = timeColumns(head);
    const units = unitReader(head);
    const parameter = head.column('parameter');
    const value = head.column('value');
    const badOf = badQuality(head);
    return (row, sink) => {
      if (row.width() <= Math.max(parameter, value))
        return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at === undefined) return;
      const bad = badOf(row);
      if (bad !== null) sink.unread(at, bad);
      else sink.reading(at, units.unit(row), row.cell(parameter), row.cell(value), units.parts(row));
    };
  },
};
