import type { Row } from '../bytes/row.ts';
import type { Sink } from '../changes/sink.ts';
import type { TimeReader } from '../clock/time-reader.ts';
import type { UnitParts } from '../phrasebook/subjects.ts';
import { type Head, timeColumns } from './head.ts';
import { stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';
import { badQuality, qualityTest } from './rule-columns.ts';
import { saysAll, unitOfValue, type ValueColumn } from './value-columns.ts';

/** What the columns of a table of polls hold. */
export interface Polled {
  /** The column of roles; -1 without one. */
  readonly role: number;
  readonly columns: readonly ValueColumn[];
  /** Columns that nothing explains: what stands in them is listed. */
  readonly unexplained: readonly ValueColumn[];
  /** The column that says how good all values of a row are; -1 without one. */
  readonly quality: number;
}

/** The columns of polled values of such a table, in the order in which its rows hand them on. */
export function polledValues({ role, columns }: Polled): readonly number[] {
  return [...(role >= 0 ? [role] : []), ...columns.map(({ index }) => index)];
}

/**
 * Takes the rows of a table of polls: every value is of the unit that its column names, else of that of its row. One value goes to
 * the sink for each column, observed or not, so that the row cache knows what stood where.
 */
export function polledRows(head: Head, polled: Polled, times: TimeReader): (row: Row, sink: Sink) => void {
  const time = timeColumns(head);
  const { role, columns, unexplained, quality: ofRow } = polled;
  const units = unitReader(
    head,
    columns.some(({ says }) => says !== null && !saysAll(says)),
  );
  const badOf = badQuality(head, ofRow);
  const isGood = qualityTest(head);
  return (row, sink) => {
    if (row.width() < head.names.length)
      return sink.reject('The row has too few columns.', 'Correct the row.');
    const at = stampOf(row, time, times, sink);
    if (at === undefined) return;
    const bad = badOf(row);
    if (bad !== null) {
      if (role >= 0) sink.unread(at, bad);
      for (const _column of columns) sink.unread(at, bad);
      return;
    }
    const unit = units.unit(row);
    const parts = units.parts(row);
    // A half's row states its role; where only the role addresses the row, the sink passes it over.
    if (role >= 0) sink.reading(at, unit, 'role', row.cell(role), parts);
    for (const column of columns) {
      const quality = column.quality < 0 ? null : row.cell(column.quality);
      if (quality !== null && !isGood(quality)) sink.unread(at, quality);
      else {
        const own = unitOfValue(column, unit, parts);
        sink.reading(at, own?.unit ?? unit, column.parameter, row.cell(column.index), apart(own));
      }
    }
    for (const { says, parameter, index } of unexplained) {
      const value = row.cell(index);
      if (value !== '') sink.reading(at, says?.unit ?? unit, parameter, value, apart(says ?? parts));
    }
  };
}

/** The parts of a unit, where its text does not say all. */
function apart(parts: UnitParts | undefined): UnitParts | undefined {
  const isText = parts?.half === '' && parts.role === '' && parts.pair === undefined;
  return isText ? undefined : parts;
}
