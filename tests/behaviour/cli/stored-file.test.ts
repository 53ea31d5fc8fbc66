import {
  appendFileSync,
  mkdtempSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { foundFile } from '../../../src/cli/folder-files.ts';
import { digestOf } from '../../../src/cli/platform.ts';
import { storedFile } from '../../../src/cli/stored-file.ts';
import { InputError, type StoredFile } from '../../../src/pipeline.ts';

const megabyte = 1_048_576;
/** More pieces than are read ahead. */
const content = Buffer.alloc(6 * megabyte, 'a line of a log\n');
const other = Buffer.alloc(6 * megabyte, 'b line of a log\n');

/** A file as a command finds it. */
function found(): { readonly path: string; readonly file: StoredFile } {
  const path = join(mkdtempSync(join(tmpdir(), 'stored-')), 'x.log');
  writeFileSync(path, content);
  // Clocks of disks tick slowly: what is written next has another time for sure.
  utimesSync(path, 1, 1);
  return { path, file: storedFile(foundFile(path, statSync(path, { bigint: true }))) };
}

const whole = digestOf(content);

/** Reads all of it, while something happens to it after the first piece; gives the SHA-256 of it, or what was wrong. */
async function read(file: StoredFile, meanwhile: () => void = () => undefined): Promise<string> {
  const pieces: Uint8Array[] = [];
  try {
    for await (const piece of file.open()) {
      if (pieces.length === 0) meanwhile();
      pieces.push(piece.slice());
    }
    return digestOf(Buffer.concat(pieces));
  } catch (error) {
    if (error instanceof InputError) return error.what;
    throw error;
  }
}

/** A file is written again under its name by a program that does not remove it first; what is read ahead may find it empty in between. */
function rewrite(path: string, bytes: Buffer): void {
  truncateSync(path);
  appendFileSync(path, bytes);
}

function replace(path: string): void {
  writeFileSync(`${path}.new`, other);
  renameSync(`${path}.new`, path);
}

describe('a file that something happens to while it is read', () => {
  test('and that grows gives what it held when it was found, in each pass', async () => {
    const { path, file } = found();
    expect(await read(file, () => appendFileSync(path, other))).toBe(whole);
    expect(await read(file)).toBe(whole);
  });

  test.each([
    ['it became shorter while it was read.', (path: string) => truncateSync(path, megabyte)],
    ['it was overwritten while it was read.', (path: string) => rewrite(path, other)],
    ['it was overwritten while it was read.', (path: string) => rewrite(path, Buffer.concat([other, other]))],
  ])('%s', async (what, change) => {
    const { path, file } = found();
    expect(await read(file, () => change(path))).toBe(what);
  });

  test.each([
    ['it was replaced by another file while it was read.', replace],
    ['it was removed or renamed while it was read.', (path: string) => rmSync(path)],
    ['it became shorter while it was read.', (path: string) => truncateSync(path, megabyte)],
    ['it was overwritten while it was read.', (path: string) => rewrite(path, other)],
  ])('between two passes: %s', async (what, change) => {
    const { path, file } = found();
    expect(await read(file)).toBe(whole);
    change(path);
    expect(await read(file)).toBe(what);
    await expect(file.slice(0, 10)).rejects.toThrow(what);
  });

  test('and that is replaced during a pass is read to its end', async () => {
    const { path, file } = found();
    expect(await read(file, () => replace(path))).toBe(whole);
  });

  test('and that only its time changed of is the same file', async () => {
    const { path, file } = found();
    await read(file);
    utimesSync(path, 2, 2);
    expect(await read(file)).toBe(whole);
  });
});
