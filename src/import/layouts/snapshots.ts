import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { type Head, hasUnit, timeColumns, timeKeys, unitKeys } from './head.ts';
import type { TableColumns, TableImporter } from './importer.ts';
import { dateCell, stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';

const columns: TableColumns = { required: [], passedOver: ['severity', 'class'], others: 'parameters' };

/** One row per poll and unit, or role: time, unit, and every other column a parameter named by its header. */
export const snapshots: TableImporter = {
  id: 'snapshots',
  title: 'snapshots',
  summary: 'CSV, one row per poll and unit, every other column a parameter',
  shape: 'table',
  columns,
  recognise(head, phrasebook) {
    const known = parameterColumns(head).filter(({ name }) => parameterNamed(phrasebook, name) !== undefined);
    if (timeColumns(head).length === 0 || !hasUnit(head))
      return { fits: false, because: 'no columns for time and unit' };
    return known.length === 0 && head.column('role') < 0
      ? { fits: false, because: 'no column is named like a parameter' }
      : {
          fits: true,
          because: `its header has columns for time and unit and names parameters: ${known.map((c) => c.name).join(', ') || 'role'}`,
        };
  },
  values(head) {
    const role = head.column('role');
    return [...(role >= 0 ? [role] : []), ...parameterColumns(head).map(({ index }) => index)];
  },
  dateText: (head) => dateCell(timeColumns(head)),
  open(head, _phrasebook, times) {
    const time = timeColumns(head);
    const units = unitReader(head);
    const parameters = parameterColumns(head);
    const role = head.column('role');
    return (row, sink) => {
      if (row.width() < head.names.length)
        return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at === undefined) return;
      const unit = units.unit(row);
      const parts = units.parts(row);
      // A half's row states its role; where only the role addresses the row, the sink passes it over.
      if (role >= 0) sink.reading(at, unit, 'role', row.cell(role), parts);
      for (const { name, index } of parameters) sink.reading(at, unit, name, row.cell(index), parts);
    };
  },
};

function parameterColumns(head: Head): readonly { readonly name: string; readonly index: number }[] {
  const keys = [...timeKeys, ...unitKeys, ...columns.passedOver];
  const taken = new Set(keys.map((key) => head.column(key)));
  return head.names
    .map((name, index) => ({ name, index }))
    .filter(({ name, index }) => name !== '' && !taken.has(index));
}
