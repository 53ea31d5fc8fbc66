import { endReader } from './ended.ts';
import { timeColumns } from './head.ts';
import type { TableColumns, TableImporter } from './importer.ts';
import { needColumns } from './need-columns.ts';
import { dateCell, stampOf } from './row-stamp.ts';
import { unitReader } from './row-unit.ts';
import { stateColumn } from './rule-columns.ts';
import { messageValue } from './value-of-message.ts';

const columns: TableColumns = {
  required: ['message'],
  optional: ['state', 'value', 'ended'],
  passedOver: ['severity', 'class'],
  others: 'unknown',
};

/** One row per journal entry: time, unit, message. */
export const journal: TableImporter = {
  id: 'journal',
  title: 'journal',
  summary: 'CSV, one row per entry: time, unit, message',
  ruleKeys: ['columns'],
  shape: 'table',
  columns,
  recognise: (head) => needColumns(head, columns),
  values: () => [],
  dateText: (head) => dateCell(timeColumns(head)),
  open(head, _phrasebook, times) {
    const time = timeColumns(head);
    const units = unitReader(head);
    const message = head.column('message');
    const state = stateColumn(head);
    const value = messageValue(head);
    const ended = endReader(head, times);
    return (row, sink) => {
      if (row.width() <= Math.max(message, state))
        return sink.reject('The row has too few columns.', 'Correct the row.');
      const at = stampOf(row, time, times, sink);
      if (at === undefined) return;
      const end = ended(row, at);
      if (typeof end === 'object') return sink.reject(end.what, end.fix);
      const beside = { state: state < 0 ? undefined : row.cell(state), ...value(row), ended: end };
      sink.entry(at, units.unit(row), row.cell(message), units.parts(row), beside);
    };
  },
};
