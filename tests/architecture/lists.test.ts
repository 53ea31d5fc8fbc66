import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyzers } from '../../src/analyze/analyzers.ts';
import { charts } from '../../src/charts/charts.ts';
import { causes } from '../../src/diagnose/causes.ts';
import { importers } from '../../src/import/layouts/importers.ts';
import { checks } from '../../src/verify/checks.ts';
import { seeds } from '../fuzz/seeds.ts';
import { causeNames, noCause } from '../support/causes/stories.ts';
import { checkIds } from '../support/stories/truth.ts';

/** What else stands in the folders: the types, the list, and what several members share. */
const shared: Readonly<Record<string, readonly string[]>> = {
  'import/layouts': [
    'clock-beside',
    'column-content',
    'columns',
    'describe-layouts',
    'ended',
    'guess-columns',
    'half-names',
    'head',
    'head-by-content',
    'importer',
    'importers',
    'json-fields',
    'leading-stamp',
    'line-fields',
    'line-format',
    'line-formats',
    'line-words',
    'need-columns',
    'numbered-columns',
    'own-format',
    'parse-json',
    'polled-rows',
    'quality',
    'recognise',
    'row-stamp',
    'row-unit',
    'rule-columns',
    'rule-effects',
    'service-journal',
    'state-column',
    'structured-data',
    'syslog',
    'tag-names',
    'unknown-layout',
    'value-columns',
    'value-of-message',
    'wide-headers',
  ],
  analyze: [
    'analyzer',
    'analyzers',
    'ask-if',
    'by-severity',
    'change-words',
    'file-figures',
    'limits',
    'far-stamps',
    'notices',
    'run-analyzers',
    'stray-stamps',
    'tell-answers',
  ],
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
    'attention',
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
  test('each has its file and its test file', () => {
    const wanted = ids.flatMap((id) => [`src/${folder}/${id}.ts`, `tests/behaviour/${folder}/${id}.test.ts`]);
    expect(wanted.filter((file) => !existsSync(file))).toEqual([]);
  });
  test('names each once', () => {
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
  test('no member of the folder is left out of it', () => {
    const known = [...ids, ...(shared[folder] ?? [])].map((id) => `${id}.ts`);
    expect(readdirSync(`src/${folder}`).filter((name) => !known.includes(name))).toEqual([]);
  });
});

describe('what else a member needs', () => {
  test('each chart is drawn by a report or by the page', () => {
    const drawing = ['src/report', 'web', 'web/components'].map(sourcesOf).join('\n');
    const drawn = new Set(
      [...drawing.matchAll(/^import \{[^}]*\} from '[^']*charts\/([\w-]+)\.ts'/gm)].map(([, id]) => id),
    );
    expect(charts.map((c) => c.id).filter((id) => !drawn.has(id))).toEqual([]);
  });
  test('each check has its rule in the swap stories, which says when it truly holds', () => {
    const ruled: readonly string[] = checkIds;
    expect(checks.map((c) => c.id).filter((id) => !ruled.includes(id))).toEqual([]);
  });
  test('each cause has its stories, and no other has', () => {
    const told = [...causeNames, noCause];
    const ids = causes.map((c) => c.meta.id);
    expect(ids.filter((id) => !told.includes(id))).toEqual([]);
    expect(told.filter((id) => !ids.includes(id))).toEqual([]);
  });
  test('each layout has an input from which the fuzzer begins', () => {
    const kinds = seeds().map((seed) => seed.kind);
    expect(importers.map((i) => i.title).filter((title) => !kinds.includes(title))).toEqual([]);
  });
  test('each option of the command line is read by a command', () => {
    const code = sourcesOf('src/cli');
    const options = [...code.matchAll(/^ {2}readonly (\w+)\?: .*\| undefined;$/gm)].map(([, name]) => name);
    expect(options.length).toBeGreaterThan(10);
    expect(options.filter((name) => !isRead(name ?? '', code))).toEqual([]);
  });
});

/** The text of all sources of a folder. */
function sourcesOf(folder: string): string {
  const files = readdirSync(folder).filter((name) => name.endsWith('.ts'));
  return files.map((name) => readFileSync(`${folder}/${name}`, 'utf8')).join('\n');
}

/** As `options.zone`, as `{ zone } = options`, as `{ zone }: CommonOptions`, or as the word `'--zone'`. */
function isRead(name: string, code: string): boolean {
  const taken = `\\{[^{}]*\\b${name}\\b[^{}]*\\}(?: = options|: \\w*Options)\\b`;
  return new RegExp(`\\boptions\\.${name}\\b|${taken}|'--${name}'`).test(code);
}
