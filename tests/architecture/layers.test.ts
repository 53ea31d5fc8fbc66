import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

import { broken } from './broken-examples.ts';

const depcruise = join('node_modules', '.bin', 'depcruise');
const base = join(process.cwd(), 'tests', 'architecture', 'broken');
mkdirSync(base, { recursive: true });
const folder = mkdtempSync(join(base, 'run-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Report {
  readonly summary: {
    readonly violations: readonly { readonly from: string; readonly rule: { readonly name: string } }[];
    readonly totalCruised: number;
  };
}

function cruise(...paths: readonly string[]): Report {
  const { stdout, stderr } = spawnSync(
    depcruise,
    ['--config', '.dependency-cruiser.mjs', '--output-type', 'json', ...paths],
    { encoding: 'utf8', maxBuffer: 1e8 },
  );
  if (!stdout.startsWith('{')) throw new Error(stderr);
  return JSON.parse(stdout);
}

/** The folder of an example. */
function folderOf(rule: string): string {
  return rule.replaceAll('/', '_');
}

/** Writes every example and looks at all of them at once; gives the rules that fired, by example. */
function firedRules(): ReadonlyMap<string, readonly string[]> {
  for (const [rule, files] of broken)
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, folderOf(rule), path)), { recursive: true });
      writeFileSync(join(folder, folderOf(rule), path), `${text}\n`);
    }
  const root = relative(process.cwd(), folder);
  const found = new Map<string, string[]>();
  for (const { from, rule } of cruise(root).summary.violations) {
    const [example = ''] = from.slice(root.length + 1).split('/');
    found.set(example, [...(found.get(example) ?? []), rule.name]);
  }
  return found;
}

const fired = firedRules();

describe('layers', () => {
  test('the project keeps every rule, and its modules are seen', () => {
    const { summary } = cruise('src', 'web');
    expect(summary.violations.map((v) => v.rule.name)).toEqual([]);
    expect(summary.totalCruised).toBeGreaterThan(100);
  });

  test.each(broken.flatMap(([name]) => /^layer-(?!web$|pipeline$|vocabulary$)(.*)$/.exec(name)?.[1] ?? []))(
    'src/%s has files',
    (name) => {
      expect(existsSync(join('src', name)) && readdirSync(join('src', name)).length).toBeGreaterThan(0);
    },
  );

  test('every folder of src, and every room in one, has its rule', () => {
    const foldersIn = (path: string): readonly string[] =>
      readdirSync(join('src', path), { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .flatMap(({ name }) => [join(path, name), ...foldersIn(join(path, name))]);
    const ruled = broken.map(([name]) => name);
    expect(foldersIn('').filter((name) => !ruled.includes(`layer-${name}`))).toEqual([]);
  });

  test('every rule has an example that breaks it', () => {
    const script =
      "import('./.dependency-cruiser.mjs').then((m) => console.log(JSON.stringify(m.default.forbidden.map((r) => r.name))))";
    const names: unknown = JSON.parse(execFileSync(process.execPath, ['-e', script], { encoding: 'utf8' }));
    expect(broken.map(([name]) => name).sort()).toEqual(Array.isArray(names) ? [...names].sort() : names);
  });

  test.each(broken)('%s fires', (rule) => {
    expect(fired.get(folderOf(rule)) ?? []).toContain(rule);
  });
});
