import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const root = mkdtempSync(join(tmpdir(), 'steadypair-lint-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const rules = 'tests/architecture/no-type-assertion.grit';

/** One line each that a rule of biome.json must refuse in the core: file name, rule, code. */
const broken: readonly (readonly [string, string, string])[] = [
  ['assertion', 'plugin', 'export const a = (x: unknown): string => x as string;'],
  ['angle-assertion', 'plugin', 'export const a = (x: unknown): string => <string>x;'],
  ['named-like-const', 'plugin', 'type constant = 1; export const a = (x: unknown) => x as constant;'],
  ['new-date', 'plugin', 'export const a = (): Date => new Date();'],
  ['new-date-bare', 'plugin', 'export const a = (): Date => new Date;'],
  ['date-call', 'plugin', 'export const a = (): string => Date();'],
  ['date-now', 'noJsRestrictedProperties', 'export const a = (): number => Date.now();'],
  ['chance', 'noJsRestrictedProperties', 'export const a = (): number => Math.random();'],
  ['any', 'noExplicitAny', 'export const a = (x: any) => x;'],
  ['bang', 'noNonNullAssertion', 'export const a = (x: string | undefined): string => x!;'],
  ['default-export', 'noDefaultExport', 'export default 1;'],
  ['enum', 'noEnum', 'export enum A { B }'],
  ['eval', 'noGlobalEval', "export const a = (): unknown => eval('1');"],
  ['function', 'noRestrictedGlobals', "export const a = () => new Function('1');"],
  ['window', 'noRestrictedGlobals', 'export const a = () => window.name;'],
  ['document', 'noRestrictedGlobals', 'export const a = () => document.title;'],
  ['process', 'noRestrictedGlobals', 'export const a = () => process.env;'],
  ['console', 'noConsole', 'export const a = () => console.log(1);'],
  ['fetch', 'noRestrictedGlobals', "export const a = () => fetch('x');"],
  ['buffer', 'noRestrictedGlobals', "export const a = () => Buffer.from('x');"],
  ['timer', 'noRestrictedGlobals', 'export const a = () => setTimeout(a, 1);'],
  ['node-module', 'noNodejsModules', "import { join } from 'node:path'; export const a = join;"],
  ['no-extension', 'useImportExtensions', "import './any';"],
  ['long-file', 'noExcessiveLinesPerFile', 'export const a = 1;\n'.repeat(201)],
  ['long-function', 'noExcessiveLinesPerFunction', `export const a = () => {\n${'a();\n'.repeat(41)}};`],
];

/** What must be refused in the page too, whose policy would let it: file, rule, code. */
const brokenInPage: readonly (readonly [string, string, string])[] = [
  ['web/eval.ts', 'noGlobalEval', "export const a = (): unknown => eval('1');"],
  ['web/components/function.ts', 'noRestrictedGlobals', "export const a = () => new Function('1');"],
];

/** What the same rules must let pass. */
const allowed: readonly (readonly [string, string])[] = [
  ['src/import/as-const.ts', "export const a = ['x'] as const;"],
  ['src/import/date-of.ts', 'export const a = (n: number): Date => new Date(n);'],
  ['src/cli/clock.ts', 'export const a = (): Date => new Date();'],
];

/** Rules that fired, by file: `src/import/any.ts` to `lint/suspicious/noExplicitAny`. */
function lint(): ReadonlyMap<string, readonly string[]> {
  const biome = join(process.cwd(), 'node_modules', '.bin', 'biome');
  const { stdout } = spawnSync(biome, ['lint', '--max-diagnostics=none', '--reporter=github', '.'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  const fired = new Map<string, string[]>();
  for (const [, rule = '', file = ''] of stdout.matchAll(
    /title=([^,]+),file=[^,]*?((?:src|tests|web)\/[^,]+),/g,
  ))
    fired.set(file, [...(fired.get(file) ?? []), rule]);
  return fired;
}

for (const path of ['biome.json', rules]) cpSync(path, join(root, path));
symlinkSync(join(process.cwd(), 'node_modules'), join(root, 'node_modules'));
const written = [
  ...broken.map(([name, , code]) => [`src/import/${name}.ts`, code]),
  ...brokenInPage.map(([path, , code]) => [path, code]),
  ...allowed,
];
for (const [path, code] of written) {
  if (path === undefined || code === undefined) continue;
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), `${code}\n`);
}
const fired = lint();

describe('lint', () => {
  test.each(broken)('%s is refused by %s', (name, rule) => {
    const found = fired.get(`src/import/${name}.ts`) ?? [];
    expect(found.map((title) => title.split('/').at(-1))).toContain(rule);
  });
  test.each(brokenInPage)('%s is refused by %s', (path, rule) => {
    expect((fired.get(path) ?? []).map((title) => title.split('/').at(-1))).toContain(rule);
  });
  test.each(allowed)('%s is let pass', (path) => {
    expect(fired.get(path) ?? []).toEqual([]);
  });
});
