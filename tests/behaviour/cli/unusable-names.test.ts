import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { steadypair } from '../../support/run-command.ts';

const log = (pair: string): string => `2026-03-14T10:00:00Z ${pair}-A partner ready\n`;
const folder = (): string => mkdtempSync(join(tmpdir(), 'named-'));

function write(path: string, text: string): string {
  writeFileSync(path, text);
  return path;
}

describe('a name that nothing can be found by', () => {
  test('since it is no UTF-8 is told so, and the rest is read', async () => {
    const here = folder();
    writeFileSync(Buffer.concat([Buffer.from(join(here, 'caf')), Buffer.from([0xe9])]), log('RO1'));
    const path = write(join(here, 'x.log'), log('RO2'));
    const { out, err } = await steadypair('inspect', here, '--json');
    const { inputs }: { readonly inputs: readonly { readonly file: string }[] } = JSON.parse(out);
    expect({ files: inputs.map((i) => i.file), err }).toEqual({
      files: [path],
      err: `${join(here, 'caf\ufffd')}: its name is not valid Unicode, or there is no such file. Rename it.\n`,
    });
  });

  test('since it is empty is told so, as an option is', async () => {
    const { status, err } = await steadypair('timeline', '');
    expect([status, err.split('\n')[0]]).toEqual([
      2,
      'a file to read: its name is empty. Name a file or a folder.',
    ]);
    const option = await steadypair('verify', write(join(folder(), 'x.log'), log('RO1')), '--out', '');
    expect([option.status, option.err]).toEqual([
      2,
      "steadypair: option '--out <folder>' argument '' is invalid. It must not be empty. See steadypair --help.\n",
    ]);
  });

  test('since the folder of the command is gone is one line', () => {
    const script = 'cd "$2" && rmdir "$2" && "$0" "$1" timeline "*.log"';
    const args = ['-c', script, process.execPath, resolve('dist', 'steadypair.mjs'), folder()];
    expect(spawnSync('bash', args, { encoding: 'utf8' }).stderr).toBe(
      '*.log: there is no such file or folder. Check the name.\nNothing could be read.\n',
    );
  });
});
