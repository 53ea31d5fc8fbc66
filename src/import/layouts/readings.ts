import { needColumns, timeColumns } from './head.ts';
import type { Importer } from './importer.ts';
import { stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';

/** One row per reading: time, unit, parameter, value. */
export const readings: Importer = {
  id: 'readings',
  title: 'Readings: one row per polled value',
  shape: 'table',
  recognise: (head) => needColumns(head, ['parameter', 'value']),
  values: (head) => [head.column('value')],
  open(head, _phrasebook, times) {
    const time = timeColumns(head);
    const units = unitReader(head);
    const parameter = head.column('parameter');
    const value = head.column('value');
    return (row, sink) => {
      if (row.width() <= Math.max(parameter, value))
        return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at !== undefined)
        sink.reading(at, units.unit(row), row.cell(parameter), row.cell(value), units.parts(row));
    };
  },
};
