/**
 * Source: RFC 4180, Common Format and MIME Type for CSV Files (2005), section 2, rules 1 to 7, with the rules' own
 * examples. Exact.
 */
import { describe, expect, test } from 'vitest';
import { csvRows } from '../../src/import/bytes/csv-rows.ts';

function rowsOf(text: string, chunk: number): readonly (readonly string[])[] {
  const rows: string[][] = [];
  const reader = csvRows(',', (row) => {
    rows.push(Array.from({ length: row.width() }, (_, column) => row.cell(column)));
  });
  for (let at = 0; at < text.length; at += chunk) reader.push(text.slice(at, at + chunk));
  reader.end();
  return rows;
}

const two = [
  ['aaa', 'bbb', 'ccc'],
  ['zzz', 'yyy', 'xxx'],
];

describe.each([1_000, 1])('RFC 4180, section 2, in pieces of %i', (chunk) => {
  test.each([
    ['1: a record stands on a line of its own', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', two],
    ['2: the last record may have no line break', 'aaa,bbb,ccc\r\nzzz,yyy,xxx', two],
    [
      '3: a header looks like a record',
      'field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [['field_name', 'field_name', 'field_name'], ...two],
    ],
    ['4: spaces are part of a field', 'aaa, bbb ,ccc\r\n', [['aaa', ' bbb ', 'ccc']]],
    ['5: a field may be quoted', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', two],
    [
      '6: a quoted field may hold line breaks',
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['7: a quote in a quoted field is doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('rule %s', (_rule, text, expected) => {
    expect(rowsOf(text, chunk)).toEqual(expected);
  });
});
