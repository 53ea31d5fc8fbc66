import { needColumns, timeColumns } from './head.ts';
import type { Importer } from './importer.ts';
import { stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';

/** One row per journal entry: time, unit, message. */
export const journal: Importer = {
  id: 'journal',
  title: 'Journal: one row per entry',
  shape: 'table',
  recognise: (head) => needColumns(head, ['message']),
  values: () => [],
  open(head, _phrasebook, times) {
    const time = timeColumns(head);
    const units = unitReader(head);
    const message = head.column('message');
    return (row, sink) => {
      if (row.width() <= message) return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at !== undefined) sink.entry(at, units.unit(row), row.cell(message), units.parts(row));
    };
  },
};
