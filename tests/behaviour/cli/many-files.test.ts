import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { steadypair } from '../../support/run-command.ts';

/** So many small logs of one pair, an hour each; every tenth holds a wording that is not known, and one a row without a time. */
function folderOf(count: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'many-'));
  for (let index = 0; index < count; index += 1) {
    const day = String((index % 28) + 1).padStart(2, '0');
    const rows = [`2026-03-${day}T10:00:00Z RO1-A light steady`];
    if (index % 10 === 3) rows.push(`2026-03-${day}T10:01:00Z RO1-A pump hums`);
    if (index === 17) rows.push(`2026-03-${day}T10:02:00Z RO1-A light off`, 'no time here');
    writeFileSync(join(folder, `log-${String(index).padStart(4, '0')}.log`), `${rows.join('\n')}\n`);
  }
  return folder;
}

describe('inspect of many files', () => {
  test('says once what they have in common, and sums the rest', async () => {
    const folder = folderOf(100);
    const { out } = await steadypair('inspect', folder);
    const text = out.replace(/\s+/g, ' ');
    expect(out.split('\n').length).toBeLessThan(60);
    expect(text).toContain(`${join(folder, 'log-0000.log')}, 40 bytes`);
    // 99 further files: one row each; then ten wordings, one row that is used and one without a time.
    expect(text).toContain('and 99 more files read in the same way,');
    expect(text).toContain(' 111 rows: 100 used, 0 unchanged, 0 ignored, 10 not recognised, 1 rejected.');
    expect(text).toContain(`"pump hums", 10 times in 10 files, first in ${join(folder, 'log-0003.log')}:2`);
    expect(text).toContain('and 7 more like it in other files (one by one with --json)');
    expect(text).toContain(`rejected rows: in ${join(folder, 'log-0017.log')}`);
  });
  test('prints each of a few by itself, and each of many with --json', async () => {
    const few = await steadypair('inspect', folderOf(20));
    expect(few.out.match(/SHA-256/g)).toHaveLength(20);
    const many = await steadypair('inspect', folderOf(30), '--json');
    expect(JSON.parse(many.out).inputs).toHaveLength(30);
  });
});
