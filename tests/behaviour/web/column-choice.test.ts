import { describe, expect, test } from 'vitest';
import type { TriedTable } from '../../../src/vocabulary.ts';
import { columnProblems, columnRule, layoutOf, sayMissing, sayOther } from '../../../web/column-choice.ts';

const table: TriedTable = {
  names: ['Moment', 'Seat', '#3'],
  headerLine: 1,
  examples: [],
  keys: [],
  missing: [],
  rows: [],
};

describe('columns by drop-down', () => {
  test('make the layout that they need', () => {
    expect(layoutOf(['time', 'unit', ''])).toBe('snapshots');
    expect(layoutOf(['time', 'unit', 'message'])).toBe('journal');
    expect(layoutOf(['time', 'parameter', 'value'])).toBe('readings');
    expect([sayOther(['time']), sayOther(['message'])]).toEqual(['a parameter of this name', 'not used']);
  });

  test('make one rule for the file, with its unit where no column names one', () => {
    expect(columnRule('in/x.csv', 'x.csv', table.names, ['time', '', 'message'], ' RO1-A ')).toEqual({
      key: 'file in/x.csv',
      says: 'x.csv: columns time "Moment", message "#3"',
      lessons: [
        {
          kind: 'file',
          match: 'x.csv',
          keys: { layout: 'journal', columns: { time: 'Moment', message: '#3' }, unit: 'RO1-A' },
        },
      ],
    });
  });

  test('ignore a column of polls by its name, and need no rule for it elsewhere', () => {
    const ignored = (chosen: readonly string[]): unknown =>
      columnRule('x.csv', 'x.csv', table.names, chosen, '').lessons.slice(1);
    expect(ignored(['time', 'ignore', ''])).toEqual([{ kind: 'ignore', pattern: '^parameter Seat$' }]);
    expect(ignored(['time', 'ignore', 'message'])).toEqual([]);
  });

  test('say beside each what is wrong: two of one kind, a time that cannot be read', () => {
    expect(columnProblems(['time', 'unit', 'unit'], table)).toEqual([
      null,
      null,
      'Another column is the unit already. Choose one of them.',
    ]);
    const row = { line: 2, time: null, unit: '', pair: null, half: null, says: [], more: 0 };
    const unread = { ...table, rows: [{ ...row, problem: '"Seat" is not a date.' }] };
    expect(columnProblems(['unit', 'time', ''], unread)).toEqual([null, '"Seat" is not a date.', null]);
  });

  test('say what is still missing', () => {
    expect(sayMissing(table)).toBeNull();
    expect(sayMissing({ missing: ['time', 'unit'] })).toBe(
      'Still missing: the column of the time; the column of the unit, or the unit of all rows.',
    );
  });
});
