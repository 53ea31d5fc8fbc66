import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { importers } from '../../src/import/layouts/importers.ts';
import { checks } from '../../src/verify/checks.ts';
import { gauges, happenings, stateSignals } from '../../src/vocabulary.ts';

const readme = readFileSync('README.md', 'utf8');

/** The first cells of the table under a head, in its order. */
function firstCells(head: string): readonly string[] {
  const [, table = ''] = readme.split(new RegExp(`^\\| ${head} .*\\n\\|[-| ]+\\n`, 'm'));
  return [...(table.split('\n\n')[0] ?? '').matchAll(/^\| ([\w-]+)/gm)].map(([, cell]) => cell ?? '');
}

test('the README tells every check, in the order of the work', () => {
  expect(firstCells('check')).toEqual(checks.map((c) => c.id));
});

test('the README tells every layout, in the order of their list', () => {
  expect(firstCells('layout')).toEqual(importers.map((i) => i.id));
});

test('the README names every signal', () => {
  const [, said = ''] = /^Signals: ([^.]*)\./m.exec(readme) ?? [];
  const named = said.split(/[,;]|\sand\s/).map((word) => word.trim());
  expect([...stateSignals, ...gauges, ...happenings].filter((s) => !named.includes(s))).toEqual([]);
});
