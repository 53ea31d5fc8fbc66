import type { Row } from '../bytes/row.ts';
import type { UnitParts } from '../phrasebook/subjects.ts';
import type { Head } from './head.ts';

/** Reads which unit a row is about: its text, and half and role where columns of their own say them. */
export interface UnitReader {
  unit(row: Row): string;
  /** Undefined where the unit text says all. */
  parts(row: Row): UnitParts | undefined;
}

export function unitReader(head: Head): UnitReader {
  const pair = head.column('pair');
  const named = pair >= 0 ? pair : head.column('unit');
  const half = head.column('half');
  const role = head.column('role');
  return {
    unit: (row) => row.cell(named),
    parts: (row) =>
      half < 0 && role < 0
        ? undefined
        : { unit: row.cell(named), half: row.cell(half), role: row.cell(role) },
  };
}
