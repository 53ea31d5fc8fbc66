import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const tracked = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
  encoding: 'utf8',
})
  .trim()
  .split('\n');
const core = tracked.filter((f) => f.startsWith('src/') && !f.startsWith('src/cli/') && f.endsWith('.ts'));
const read = (file: string): string => (existsSync(file) ? readFileSync(file, 'utf8') : '');

describe('sources', () => {
  test('the core knows no clock and no chance', () => {
    expect(core.length).toBeGreaterThan(80);
    for (const file of core)
      expect([file, /\bDate\.now\b|\bMath\.random\b|new Date\(\)/.test(read(file))]).toEqual([file, false]);
  });
  test('charts take only the types of vega-lite', () => {
    for (const file of core.filter((f) => f.startsWith('src/charts/'))) {
      expect([file, /^(?:import|export) (?!type\b)[^;]*'vega/m.test(read(file))]).toEqual([file, false]);
    }
  });
  test('nothing is left to do without an issue number', () => {
    const mark = ['TO', 'DO'].join('');
    for (const file of tracked.filter((f) => /\.(ts|mjs|md)$/.test(f))) {
      expect([file, new RegExp(`\\b${mark}\\b(?! #\\d)`).test(read(file))]).toEqual([file, false]);
    }
  });
  test('DEVELOPERS.md names no folder that is not there', () => {
    const named = [...read('DEVELOPERS.md').matchAll(/`((?:src|tests|samples|web)\/[\w/-]*)`/g)].map(
      (m) => m[1] ?? '',
    );
    expect(named.length).toBeGreaterThan(5);
    expect(named.filter((name) => !existsSync(name))).toEqual([]);
  });
  test('the README opens with the job in one paragraph, and its commands exist', () => {
    const [title, job] = read('README.md').split('\n\n');
    expect(title).toBe('# Steadypair');
    expect(job).toMatch(/redundant/);
    const scripts: unknown = JSON.parse(read('package.json')).scripts;
    for (const [, name] of read('README.md').matchAll(/npm run (\w+)/g))
      expect(scripts).toHaveProperty(name ?? '');
  });
});
