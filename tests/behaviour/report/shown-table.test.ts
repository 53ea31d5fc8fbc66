import { describe, expect, test } from 'vitest';
import {
  abnormal,
  classOf,
  columns,
  onPaper,
  plain,
  type ShownTable,
} from '../../../src/report/shown-table.ts';

function tableOf(count: number): ShownTable {
  const rows = Array.from({ length: count }, (_, index) => ({ cells: [plain(`P${index + 1}`)], lines: [] }));
  return { columns: columns('Pair'), rows, file: 'fleet-pairs.csv', note: 'As it was.' };
}

describe('a table on paper', () => {
  test('is whole up to a hundred rows', () => {
    expect(onPaper(tableOf(100))).toEqual(tableOf(100));
  });
  test('of more holds the first hundred, and says where the others are', () => {
    const { rows, note } = onPaper(tableOf(107));
    expect([rows.length, rows.at(-1)?.cells[0]?.text]).toEqual([100, 'P100']);
    expect(note).toBe('7 further rows are in fleet-pairs.csv.');
  });
});

// look.md: rust is critical, ochre a warning, what is normal has no colour.
test('a cell is coloured by its severity alone', () => {
  expect([plain('fit'), abnormal('not fit'), abnormal('warning', 'warning')].map(classOf)).toEqual([
    '',
    'fail',
    'inconclusive',
  ]);
});
