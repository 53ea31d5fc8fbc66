/**
 * Sources: npm package csv-spectrum 2.0.0 (BSD-2-Clause), 11 of its 12 files: the JSON of location_coordinates does not
 * match its CSV. npm package papaparse 5.7.1 (MIT), tests/test-cases.js, the cases of its core parser that set no more
 * than a delimiter. Exact, but for blank rows and lone carriage returns, which are no row end here, and for a quote that
 * is never closed: there every line is a row of its own.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { csvRows } from '../../src/import/bytes/csv-rows.ts';

function rowsOf(text: string, delimiter: string, chunk: number): readonly (readonly string[])[] {
  const rows: string[][] = [];
  const reader = csvRows(delimiter, (row) => {
    rows.push(Array.from({ length: row.width() }, (_, column) => row.cell(column)));
  });
  for (let at = 0; at < text.length; at += chunk) reader.push(text.slice(at, at + chunk));
  reader.end();
  return rows;
}

const require = createRequire(import.meta.url);
const corpus = dirname(require.resolve('csv-spectrum'));
const names = readdirSync(`${corpus}/csvs`)
  .map((file) => file.replace('.csv', ''))
  .filter((name) => name !== 'location_coordinates');

describe('csv-spectrum', () => {
  test('has eleven files to read', () => expect(names).toHaveLength(11));

  test.each(names.flatMap((name) => [1, 7, 100_000].map((chunk) => ({ name, chunk }))))(
    '$name in pieces of $chunk',
    ({ name, chunk }) => {
      const [header = [], ...rows] = rowsOf(readFileSync(`${corpus}/csvs/${name}.csv`, 'utf8'), ',', chunk);
      const records = rows.map((row) => Object.fromEntries(header.map((key, index) => [key, row[index]])));
      expect(records).toEqual(JSON.parse(readFileSync(`${corpus}/json/${name}.json`, 'utf8')));
    },
  );
});

interface Case {
  readonly description: string;
  readonly input: string;
  readonly config?: { readonly delimiter?: string };
  readonly expected: { readonly data: readonly (readonly string[])[]; readonly errors: readonly unknown[] };
}

const all: readonly Case[] = runInNewContext(
  `${readFileSync('node_modules/papaparse/tests/test-cases.js', 'utf8')}; CORE_PARSER_TESTS`,
  { chai: { assert: {} }, describe: Object.assign(() => undefined, { skip: () => undefined }) },
);
const isBlank = (row: readonly string[]): boolean => row.length === 1 && row[0]?.trim() === '';
const cases = all.filter(
  ({ config = {}, input, expected }) =>
    Object.keys(config).every((key) => key === 'delimiter' && /^.$/.test(config.delimiter ?? '')) &&
    !/\r(?!\n)/.test(input) &&
    expected.errors.length === 0,
);

describe('the core parser cases of papaparse', () => {
  test('are at least thirty', () => expect(cases.length).toBeGreaterThanOrEqual(30));

  test.each(cases.flatMap((c) => [1, 100_000].map((chunk) => ({ ...c, chunk }))))(
    '$description in pieces of $chunk',
    ({ input, config, expected, chunk }) => {
      const found = rowsOf(input, config?.delimiter ?? ',', chunk);
      expect(found.filter((row) => !isBlank(row))).toEqual(
        [...expected.data].map((row) => [...row]).filter((row) => !isBlank(row)),
      );
    },
  );
});
