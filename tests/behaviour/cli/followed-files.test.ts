import * as fs from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterEach, describe, expect, test } from 'vitest';
import { followFiles } from '../../../src/cli/followed-files.ts';
import {
  type FollowedFolder,
  followFolder,
  type LookedInto,
  logRow,
  logRows,
  newFolder,
} from '../../support/followed-folder.ts';

const open: FollowedFolder[] = [];
afterEach(async () => {
  for (const { files } of open.splice(0)) await files.close();
});

function follow(...paths: readonly string[]): FollowedFolder {
  const followed = followFolder(paths);
  open.push(followed);
  return followed;
}

/** Rows from 0 up to a number, in the order of the sorted texts. */
function upTo(count: number, from = 0): readonly string[] {
  return Array.from({ length: count - from }, (_, i) => logRow(from + i)).sort();
}

function names({ read }: LookedInto): readonly string[] {
  return read.map(({ input }) => input.file.split('/').at(-1) ?? '');
}

describe('files that are followed', () => {
  test('give their whole rows as they grow, and a row cut off only at the end', async () => {
    const folder = newFolder();
    const log = join(folder, 'ro1.log');
    fs.writeFileSync(log, logRows(0, 5));
    const site = follow(folder);
    expect((await site.look()).rows).toEqual(upTo(5));
    fs.appendFileSync(log, logRows(5, 8) + logRow(8).slice(0, 30));
    expect((await site.look()).rows).toEqual(upTo(8));
    fs.appendFileSync(log, logRow(8).slice(30));
    expect((await site.look()).rows).toEqual(upTo(8));
    expect((await site.look(true)).rows).toEqual(upTo(9));
  });

  test('say whether anything changed, and keep one object for a file that only grows', async () => {
    const folder = newFolder();
    const log = join(folder, 'ro1.log');
    fs.writeFileSync(log, logRows(0, 5));
    const site = follow(folder);
    const first = await site.look();
    expect([first.hasChanged, (await site.look()).hasChanged]).toEqual([true, false]);
    fs.appendFileSync(log, logRows(5, 6));
    const second = await site.look();
    expect(second.hasChanged).toBe(true);
    expect(second.files[0]).toBe(first.files[0]);
  });

  test('appear in a folder, which may have no logs yet, and in folders below it', async () => {
    const folder = newFolder();
    const site = follow(folder);
    const none = await site.look();
    expect(none.failures.map((f) => f.what)).toEqual(['the folder contains no logs.']);
    fs.writeFileSync(join(folder, 'a.log'), logRows(0, 3));
    expect((await site.look()).rows).toEqual(upTo(3));
    fs.mkdirSync(join(folder, 'more'));
    fs.writeFileSync(join(folder, 'more', 'b.log'), logRows(3, 5));
    const both = await site.look();
    expect([both.rows, both.failures]).toEqual([upTo(5), []]);
  });

  test('go on under a new name where they are renamed, and the rest of them is read', async () => {
    const folder = newFolder();
    const log = join(folder, 'ro1.log');
    fs.writeFileSync(log, logRows(0, 2000));
    const site = follow(folder);
    const before = await site.look();
    fs.appendFileSync(log, logRows(2000, 2003));
    fs.renameSync(log, `${log}.1`);
    fs.writeFileSync(log, logRows(2003, 2005));
    const after = await site.look();
    expect([after.rows, names(after)]).toEqual([upTo(2005), ['ro1.log', 'ro1.log.1']]);
    expect(after.files[1]).toBe(before.files[0]);
  });

  test('are read on by their handle where they are renamed to where nobody looks', async () => {
    const folder = newFolder();
    const away = newFolder();
    const log = join(folder, 'ro1.log');
    fs.writeFileSync(log, logRows(0, 5));
    const site = follow(log);
    await site.look();
    fs.appendFileSync(log, logRows(5, 7));
    fs.renameSync(log, join(away, 'old.log'));
    fs.writeFileSync(log, logRows(9, 10));
    const after = await site.look();
    expect(after.rows).toEqual([...upTo(7), ...upTo(10, 9)].sort());
    expect(names(after)[0]).toMatch(/^ro1\.log \(before \d+ \w{3} \d{4} \d\d:\d\d:\d\d UTC\)$/);
    fs.appendFileSync(join(away, 'old.log'), logRows(7, 9));
    expect((await site.look()).rows).toEqual(upTo(10));
  });

  test('keep what was read of one that is cut, where what it holds then begins after that', async () => {
    const folder = newFolder();
    const log = join(folder, 'ro1.log');
    fs.writeFileSync(log, logRows(0, 9));
    const site = follow(folder);
    await site.look();
    fs.writeFileSync(log, '');
    expect((await site.look()).rows).toEqual(upTo(9));
    fs.appendFileSync(log, logRows(9, 30));
    const after = await site.look();
    expect([after.rows, names(after)[1]]).toEqual([upTo(30), 'ro1.log']);
  });

  test('notice one that was cut and is longer again than it was', async () => {
    const folder = newFolder();
    const log = join(folder, 'ro1.log');
    fs.writeFileSync(log, logRows(0, 9));
    const site = follow(folder);
    await site.look();
    fs.writeFileSync(log, logRows(9, 60));
    expect((await site.look()).rows).toEqual(upTo(60));
  });

  test('go on in the copy of one that was copied and cut, with what was written just before', async () => {
    for (const looksBetween of [false, true]) {
      const folder = newFolder();
      const log = join(folder, 'ro1.log');
      fs.writeFileSync(log, logRows(0, 9));
      const site = follow(folder);
      await site.look();
      fs.appendFileSync(log, logRows(9, 12));
      fs.copyFileSync(log, `${log}.1`);
      if (looksBetween) await site.look();
      fs.truncateSync(log);
      fs.appendFileSync(log, logRows(12, 14));
      const after = await site.look();
      expect([after.rows, names(after)]).toEqual([upTo(14), ['ro1.log', 'ro1.log.1']]);
    }
  });

  test('drop what was read of one that another export of the same time took the place of', async () => {
    const folder = newFolder();
    const log = join(folder, 'ro1.log');
    fs.writeFileSync(log, logRows(0, 20));
    const site = follow(folder);
    await site.look();
    const other = logRows(5, 9).replaceAll('RO1-A', 'RO2-B');
    fs.writeFileSync(log, other);
    expect((await site.look()).rows).toEqual(other.trimEnd().split('\n'));
    fs.writeFileSync(`${log}.new`, logRows(2, 4));
    fs.renameSync(`${log}.new`, log);
    expect((await site.look()).rows).toEqual(upTo(4, 2));
  });

  test('stay as they were read while their folder is away, with one notice, and go on when it is back', async () => {
    const folder = newFolder();
    const share = join(folder, 'share');
    fs.mkdirSync(share);
    fs.writeFileSync(join(share, 'ro1.log'), logRows(0, 9));
    const site = follow(share);
    const before = await site.look();
    fs.renameSync(share, join(folder, 'gone'));
    for (const _turn of [1, 2]) {
      const away = await site.look();
      expect([away.rows, away.failures]).toEqual([upTo(9), []]);
    }
    // Its handle is lost with a share; here it must be closed for the file to be away.
    await site.files.close();
    const away = await site.look();
    expect(away.notices).toEqual([
      `${share}: it cannot be reached now; what was read of it stays, and it is tried again.`,
    ]);
    // As a share may, it comes back with other inodes.
    fs.mkdirSync(share);
    fs.copyFileSync(join(folder, 'gone', 'ro1.log'), join(share, 'ro1.log'));
    fs.appendFileSync(join(share, 'ro1.log'), logRows(9, 12));
    const back = await site.look();
    expect([back.rows, back.notices, back.failures]).toEqual([upTo(12), [], []]);
    expect(back.files[0]).toBe(before.files[0]);
  });

  test('are archives too: unpacked again when they change, and not before', async () => {
    const folder = newFolder();
    const packed = join(folder, 'ro1.log.gz');
    fs.writeFileSync(packed, gzipSync(logRows(0, 5)));
    const site = follow(folder);
    await site.look();
    expect((await site.look()).rows).toEqual(upTo(5));
    fs.writeFileSync(packed, gzipSync(logRows(0, 400)));
    expect((await site.look()).rows).toEqual(upTo(400));
  });

  test('settle what waits for a change soon after one, and at the latest when it was told', async () => {
    const folder = newFolder();
    fs.writeFileSync(join(folder, 'ro1.log'), logRows(0, 5));
    const files = followFiles([folder]);
    await files.look();
    await files.changed(100);
    setTimeout(() => fs.appendFileSync(join(folder, 'ro1.log'), logRows(5, 6)), 50);
    await files.changed(600_000);
    expect((await files.look()).hasChanged).toBe(true);
    await files.close();
  });

  test('are gone where they are removed, and what was read of them stays', async () => {
    const folder = newFolder();
    fs.writeFileSync(join(folder, 'a.log'), logRows(0, 5));
    fs.writeFileSync(join(folder, 'b.log'), logRows(5, 9));
    const site = follow(folder);
    await site.look();
    fs.rmSync(join(folder, 'a.log'));
    expect((await site.look()).rows).toEqual(upTo(9));
  });
});
