import { describe, expect, test } from 'vitest';
import { columns, plain, type ShownTable } from '../../../src/report/shown-table.ts';
import {
  arranged,
  nextOrder,
  type Order,
  orderOf,
  orderText,
  sortValue,
  tableCsv,
} from '../../../web/table-order.ts';

function tableOf(titles: readonly string[], ...rows: readonly (readonly string[])[]): ShownTable {
  return {
    columns: columns(...titles),
    rows: rows.map((cells) => ({ cells: cells.map(plain), lines: [] })),
    file: 'x.csv',
    note: '',
  };
}

const pairs = tableOf(
  ['Pair', 'Losses#', 'Per year, 95 % limits#', 'Longest', 'Newest'],
  ['RO10', '9', '9.5 (6.5 to 16.1)', '1 h 05 min', '2 Jun 2026 03:00:00'],
  ['RO2', '23', '11.0 (6.9 to 16.7)', '59 min 10 s', '14 Mar 2026 09:00:00'],
  ['INTAKE', '1,204', '1 loss in 1 h 45 min', '4.2 s', '3 Nov 2025 10:00:00'],
);

function names(filter: string, order: Order): readonly string[] {
  return arranged(pairs, filter, order).map(({ cells: [first] }) => first?.text ?? '');
}

describe('a table', () => {
  test.each([
    { what: 'names with their figures', column: 0, ascending: ['INTAKE', 'RO2', 'RO10'] },
    { what: 'counts with commas', column: 1, ascending: ['RO10', 'RO2', 'INTAKE'] },
    { what: 'durations by how long they are', column: 3, ascending: ['INTAKE', 'RO2', 'RO10'] },
    { what: 'instants by time', column: 4, ascending: ['INTAKE', 'RO2', 'RO10'] },
  ])('sorts $what, both ways', ({ column, ascending }) => {
    expect(names('', { column, isDescending: false })).toEqual(ascending);
    expect(names('', { column, isDescending: true })).toEqual(ascending.toReversed());
  });

  test('puts what has no value last in both directions', () => {
    expect(names('', { column: 2, isDescending: false })).toEqual(['RO10', 'RO2', 'INTAKE']);
    expect(names('', { column: 2, isDescending: true })).toEqual(['RO2', 'RO10', 'INTAKE']);
  });

  test('keeps the rows that hold all words, in any cell and whatever their case', () => {
    expect(names('ro 2026', null)).toEqual(['RO10', 'RO2']);
    expect(names('mar RO2', null)).toEqual(['RO2']);
    expect(names('ro3', null)).toEqual([]);
  });

  test('is as it was given where nothing is asked', () => {
    expect(names(' ', null)).toEqual(['RO10', 'RO2', 'INTAKE']);
  });
});

test.each([
  ['3 h 04 min', true, 11_040],
  ['2 min 22 s', false, 142],
  ['730 d', true, 63_072_000],
  ['longer than 8 min 21 s', false, 501],
  ['-7 s (-9 to -5), p = 0.02', false, -7],
  ['Jun 2026', false, Date.UTC(2026, 5, 1)],
  ['14 Mar 2026 09:14:05 to 09:14:10', false, Date.UTC(2026, 2, 14, 9, 14, 5)],
  ['09:14:05', false, 33_245_000],
  ['99.993 %', true, 99.993],
  ['less than 0.1 %', true, 0.1],
  ['6.4.1', true, null],
  ['12', false, null],
  ['1 loss in 1 h 45 min', true, null],
  ['not known', true, null],
] as const)('%s in a column of figures (%s) counts as %s', (text, isNumber, value) => {
  expect(sortValue(text, isNumber)).toBe(value);
});

test('a press on a head sorts, the next turns round, the third gives the order back', () => {
  const figures = [nextOrder(null, 1, true)];
  figures.push(nextOrder(figures[0] ?? null, 1, true));
  figures.push(nextOrder(figures[1] ?? null, 1, true));
  expect(figures).toEqual([{ column: 1, isDescending: true }, { column: 1, isDescending: false }, null]);
  const words = nextOrder({ column: 1, isDescending: true }, 0, false);
  expect(words).toEqual({ column: 0, isDescending: false });
  expect(nextOrder(nextOrder(words, 0, false), 0, false)).toBe(null);
});

test('an order is written for an address and read back; what was not written so is none', () => {
  const order = { column: 2, isDescending: true };
  expect([orderText(order), orderOf('2d'), orderText(null)]).toEqual(['2d', order, null]);
  for (const text of ['', 'd', '2x', '-1d', '2d ', undefined]) expect(orderOf(text)).toBe(null);
});

test('what is shown is saved as CSV in its order, quoted, and no cell is a formula', () => {
  const table = tableOf(['Pair', 'What, and why'], ['=1+1', 'a "b", c'], ['RO1', 'plain']);
  expect(tableCsv(table, table.rows.toReversed())).toBe(
    'Pair,"What, and why"\r\nRO1,plain\r\n\'=1+1,"a ""b"", c"\r\n',
  );
});
