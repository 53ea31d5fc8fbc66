import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { hasUnit, timeColumns } from './head.ts';
import type { Recognition, TableColumns, TableImporter } from './importer.ts';
import { dateCell, stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';
import { badQuality } from './rule-columns.ts';
import { saysUnits, unitOfValue, type ValueColumns, valueColumns } from './value-columns.ts';

const columns: TableColumns = {
  required: [],
  optional: ['quality'],
  passedOver: ['severity', 'class'],
  others: 'parameters',
};

/** One row per poll and unit, or role: time, unit, and every other column a parameter named by its header. */
export const snapshots: TableImporter = {
  id: 'snapshots',
  title: 'snapshots',
  summary: 'CSV, one row per poll and unit, every other column a parameter',
  ruleKeys: ['columns', 'header'],
  shape: 'table',
  columns,
  recognise(head, phrasebook) {
    if (timeColumns(head).length === 0) return { fits: false, because: 'no columns for time and unit' };
    const found = valueColumns(head, columns.passedOver);
    if (head.rule?.header !== undefined) return recogniseNames(found, hasUnit(head, phrasebook));
    const known = found.columns.filter(({ name }) => parameterNamed(phrasebook, name) !== undefined);
    if (!hasUnit(head, phrasebook)) return { fits: false, because: 'no columns for time and unit' };
    return known.length === 0 && head.column('role') < 0
      ? { fits: false, because: 'no column is named like a parameter' }
      : {
          fits: true,
          because: `its header has columns for time and unit and names parameters: ${known.map((c) => c.name).join(', ') || 'role'}`,
        };
  },
  values(head) {
    const role = head.column('role');
    const { columns: parameters } = valueColumns(head, columns.passedOver);
    return [...(role >= 0 ? [role] : []), ...parameters.map(({ index }) => index)];
  },
  dateText: (head) => dateCell(timeColumns(head)),
  open(head, _phrasebook, times) {
    const time = timeColumns(head);
    const units = unitReader(head);
    const { columns: parameters } = valueColumns(head, columns.passedOver);
    const role = head.column('role');
    const badOf = badQuality(head);
    return (row, sink) => {
      if (row.width() < head.names.length)
        return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at === undefined) return;
      const bad = badOf(row);
      if (bad !== null) {
        if (role >= 0) sink.unread(at, bad);
        for (const _parameter of parameters) sink.unread(at, bad);
        return;
      }
      const unit = units.unit(row);
      const parts = units.parts(row);
      // A half's row states its role; where only the role addresses the row, the sink passes it over.
      if (role >= 0) sink.reading(at, unit, 'role', row.cell(role), parts);
      for (const column of parameters) {
        const own = unitOfValue(column, unit, parts);
        sink.reading(at, own?.unit ?? unit, column.parameter, row.cell(column.index), own);
      }
    };
  },
};

const mostNamed = 5;

/** A table whose columns are named as the phrasebook says: at least one must be, and the others are said. */
function recogniseNames(found: ValueColumns, rowHasUnit: boolean): Recognition {
  const { columns: fitting, passedOver } = found;
  if (fitting.length === 0) return { fits: false, because: 'files.header fits the name of no column' };
  if (!rowHasUnit && !saysUnits(found))
    return { fits: false, because: 'neither files.header nor a column says the unit' };
  const named = passedOver.slice(0, mostNamed).map((name) => `"${name}"`);
  const more = passedOver.length - named.length;
  const others = `${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
  return {
    fits: true,
    because: `its header names unit and parameter of ${fitting.length === 1 ? 'one column' : `${fitting.length} columns`} as files.header says${passedOver.length === 0 ? '' : `; passed over: ${others}`}`,
  };
}
