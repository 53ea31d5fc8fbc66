import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { type Head, hasUnit, timeColumns } from './head.ts';
import type { Recognition, TableColumns, TableImporter } from './importer.ts';
import { type Polled, polledRows, polledValues } from './polled-rows.ts';
import { dateCell } from './row-stamp.ts';
import { qualityColumn } from './rule-columns.ts';
import { saysUnits, type ValueColumns, valueColumns } from './value-columns.ts';

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
    const found = valueColumns(head, phrasebook, columns.passedOver);
    if (head.rule?.header !== undefined) return recogniseNames(found, hasUnit(head, phrasebook));
    const known = found.columns.filter(
      ({ parameter }) => parameterNamed(phrasebook, parameter) !== undefined,
    );
    if (!hasUnit(head, phrasebook)) return { fits: false, because: 'no columns for time and unit' };
    return known.length === 0 && head.column('role') < 0
      ? { fits: false, because: 'no column name is a known parameter' }
      : {
          fits: true,
          because: `its header has columns for time and unit and names parameters: ${known.map((c) => c.name).join(', ') || 'role'}`,
        };
  },
  values: (head, phrasebook) => polledValues(polledIn(head, phrasebook)),
  dateText: (head) => dateCell(timeColumns(head)),
  open: (head, phrasebook, times) => polledRows(head, polledIn(head, phrasebook), times),
};

function polledIn(head: Head, phrasebook: Phrasebook): Polled {
  const { columns: parameters } = valueColumns(head, phrasebook, columns.passedOver);
  return { role: head.column('role'), columns: parameters, unexplained: [], quality: qualityColumn(head) };
}

const mostNamed = 5;

/** A table whose columns are named as the phrasebook says: at least one must be, and the others are said. */
function recogniseNames(found: ValueColumns, rowHasUnit: boolean): Recognition {
  const { columns: fitting, passedOver } = found;
  if (fitting.length === 0) return { fits: false, because: 'files.header matches no column name' };
  if (!rowHasUnit && !saysUnits(found))
    return { fits: false, because: 'neither files.header nor a column gives the unit' };
  const named = passedOver.slice(0, mostNamed).map((name) => `"${name}"`);
  const more = passedOver.length - named.length;
  const others = `${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
  return {
    fits: true,
    because: `its header names unit and parameter of ${fitting.length === 1 ? 'one column' : `${fitting.length} columns`} as files.header says${passedOver.length === 0 ? '' : `; skipped: ${others}`}`,
  };
}
