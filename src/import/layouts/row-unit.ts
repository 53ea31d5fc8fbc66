import type { Row } from '../bytes/row.ts';
import type { UnitParts } from '../phrasebook/subjects.ts';
import type { Head } from './head.ts';

/** Reads which unit a row is about: its text, and pair, half and role where columns of their own say them. */
export interface UnitReader {
  unit(row: Row): string;
  /** Undefined where the unit text says all. */
  parts(row: Row): UnitParts | undefined;
}

/** `saysHalves`: the names of columns say of which half their values are, so that the row's own text is the name of a pair. */
export function unitReader(head: Head, saysHalves = false): UnitReader {
  const half = head.column('half');
  const role = head.column('role');
  const isApart = half >= 0 || role >= 0 || saysHalves;
  const pair = head.column('pair');
  // Beside a pair any column may be named like a unit: it counts where the phrasebook says so.
  const unit = pair < 0 || head.rule?.columns.unit !== undefined ? head.column('unit') : -1;
  const cellOf = (row: Row, column: number): string => (column < 0 ? '' : row.cell(column));
  return {
    unit: (row) => cellOf(row, !isApart && pair >= 0 ? pair : unit),
    parts: (row) =>
      isApart
        ? {
            unit: cellOf(row, unit),
            ...(pair < 0 ? {} : { pair: row.cell(pair) }),
            half: cellOf(row, half),
            role: cellOf(row, role),
          }
        : undefined,
  };
}
