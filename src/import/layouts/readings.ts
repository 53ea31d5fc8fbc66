import { hasUnit, timeColumns } from './head.ts';
import type { TableColumns, TableImporter } from './importer.ts';
import { needColumns } from './need-columns.ts';
import { isBad, qualityColumn } from './quality.ts';
import { stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';
import { tagReader } from './tag-names.ts';

const columns: TableColumns = { required: ['parameter', 'value'], passedOver: [], others: 'unknown' };

/** One row per reading: time, unit, parameter, value. */
export const readings: TableImporter = {
  id: 'readings',
  title: 'readings',
  summary: 'CSV, one row per reading: time, unit, parameter, value',
  shape: 'table',
  columns,
  recognise: (head) => needColumns(head, columns),
  values: (head) => [head.column('value')],
  open(head, phrasebook, times) {
    const time = timeColumns(head);
    const units = unitReader(head);
    // Without a column of units the name of a parameter says of which unit it is: `RO1-A.Role`.
    const tagOf = hasUnit(head) ? null : tagReader(phrasebook);
    const quality = qualityColumn(head);
    const parameter = head.column('parameter');
    const value = head.column('value');
    return (row, sink) => {
      if (row.width() <= Math.max(parameter, value))
        return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at === undefined) return;
      // A value that its quality says is bad was not read.
      if (quality >= 0 && quality !== value && isBad(row.cell(quality))) return sink.ignore();
      if (tagOf === null)
        return sink.reading(at, units.unit(row), row.cell(parameter), row.cell(value), units.parts(row));
      const tag = tagOf(row.cell(parameter));
      sink.reading(at, tag.unit, tag.parameter, row.cell(value));
    };
  },
};
