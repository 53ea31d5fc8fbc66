import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const logs = resolve('samples', 'marrow-bay', 'bad-swap');
const folder = mkdtempSync(join(tmpdir(), 'steadypair-one-file-'));
const command = join(folder, 'steadypair.mjs');
copyFileSync(resolve('dist', 'steadypair.mjs'), command);

function built(...args: readonly string[]): { readonly status: number | null; readonly stderr: string } {
  const { status, stderr } = spawnSync(process.execPath, [command, ...args], { encoding: 'utf8' });
  return { status, stderr };
}

test('the command is one file: in a folder without anything else every part of it is found', () => {
  const site = [logs, '--phrasebook', join(logs, 'phrasebook.yaml')];
  const out = join(folder, 'out');
  const zip = join(folder, 'case.zip');
  const stored = join(folder, 'stored.parquet');
  // The swap is not verified.
  expect(built('verify', ...site, '--out', out, '--bundle', zip)).toEqual({ status: 1, stderr: '' });
  expect(readdirSync(out).some((name) => name.endsWith('.html'))).toBe(true);
  expect(built('timeline', ...site, '--format', 'parquet', '--out', stored)).toEqual({
    status: 0,
    stderr: '',
  });
  expect(existsSync(stored)).toBe(true);
  expect(built('timeline', stored)).toEqual({ status: 0, stderr: '' });
  expect(built('timeline', zip)).toEqual({ status: 0, stderr: '' });
  expect(built('timeline', join(logs, '*.log'))).toEqual({ status: 0, stderr: '' });
  expect(built('timeline', join(folder, 'missing.csv'))).toMatchObject({ status: 2 });
});

test('no character of the command takes two bytes: V8 would keep all of it at twice the size', () => {
  expect(readFileSync(command).every((byte) => byte < 128)).toBe(true);
});
