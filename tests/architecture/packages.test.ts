import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { builtPage } from '../support/open-page.ts';

const {
  devDependencies,
  files,
}: { readonly devDependencies: Readonly<Record<string, string>>; readonly files: readonly string[] } =
  JSON.parse(readFileSync('package.json', 'utf8'));
const reasons = readFileSync('DEVELOPERS.md', 'utf8').split('## Packages, and why')[1] ?? '';
const [inProducts = ''] = reasons.split('To build and to check:');
const named = (text: string): readonly string[] =>
  [...text.matchAll(/^- `([^`]+)`: \S/gm)].map(([, name = '']) => name);

test('every package has its reason in a line, and no other has', () => {
  expect([...named(reasons)].sort()).toEqual(Object.keys(devDependencies).sort());
});

test('versions are exact: the same today and in a year', () => {
  expect(
    Object.entries(devDependencies).filter(([, version]) => !/^\d+\.\d+\.\d+(?:-[\w.]+)?$/.test(version)),
  ).toEqual([]);
});

test('the licence of every package in a product ships with it', () => {
  const shipped = `${readFileSync('dist/NOTICE.txt', 'utf8')}\n${readFileSync(builtPage(), 'utf8')}`;
  const missing = named(inProducts).filter(
    (name) => !shipped.includes(`\n${name} ${devDependencies[name]}, `),
  );
  expect(missing).toEqual([]);
  expect(files).toEqual(['dist']);
  // The plugin says so where a package has no text of its licence; then it has to be found.
  expect(shipped).not.toContain('comes without the text of its licence');
});
