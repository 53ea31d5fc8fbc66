import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyzers } from '../../src/analyze/analyzers.ts';
import { charts } from '../../src/charts/charts.ts';
import { causes } from '../../src/diagnose/causes.ts';
import { importers } from '../../src/import/layouts/importers.ts';
import { checks } from '../../src/verify/checks.ts';

/** What else stands in the folders: the types, the list, and what several members share. */
const shared: Readonly<Record<string, readonly string[]>> = {
  'import/layouts': [
    'columns',
    'describe-layouts',
    'guess-columns',
    'head',
    'importer',
    'importers',
    'line-formats',
    'need-columns',
    'recognise',
    'row-stamp',
    'row-unit',
    'syslog',
  ],
  analyze: ['analyzer', 'analyzers', 'by-severity', 'limits', 'far-stamps', 'notices', 'run-analyzers'],
  verify: [
    'at-end',
    'check',
    'checks',
    'each-switchover',
    'find-swaps',
    'last-bring-ups',
    'limits',
    'plan-misfit',
    'say-verdict',
    'steps',
    'unbroken',
    'unread',
    'verify-swap',
  ],
  charts: ['chart', 'charts', 'ink'],
  diagnose: [
    'begins',
    'cause',
    'causes',
    'choose-pair',
    'coincidence',
    'diagnose-pair',
    'exports-for',
    'field-rules',
    'fixed-time',
    'gauge-median',
    'identity-lines',
    'limits',
    'observations',
    'rank-causes',
    'say-answer',
    'say-counts',
    'say-opening',
    'standing',
    'tally',
    'trouble',
    'weigh-fault',
    'weigh-state',
  ],
};

describe.each([
  ['import/layouts', importers.map((i) => i.id)],
  ['analyze', analyzers.map((a) => a.meta.id)],
  ['verify', checks.map((c) => c.id)],
  ['charts', charts.map((c) => c.id)],
  ['diagnose', causes.map((c) => c.meta.id)],
])('the list of %s', (folder, ids) => {
  test.each(ids)('%s has its file and its test file', (id) => {
    expect(existsSync(`src/${folder}/${id}.ts`)).toBe(true);
    expect(existsSync(`tests/behaviour/${folder}/${id}.test.ts`)).toBe(true);
  });
  test('names each once, and no member of the folder is left out of it', () => {
    expect(new Set(ids).size).toBe(ids.length);
    const others = shared[folder];
    if (others === undefined) return;
    const files = readdirSync(`src/${folder}`).map((name) => name.replace(/\.ts$/, ''));
    expect(files.filter((name) => !others.includes(name)).sort()).toEqual([...ids].sort());
  });
});
