import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { changesFrom } from '../../../../src/change-columns.ts';
import { allChanges } from '../../../../src/changes.ts';
import { digestOf } from '../../../../src/cli/platform.ts';
import { timelineParquet } from '../../../../src/report/timeline-parquet.ts';
import type { Change, ImportedFile } from '../../../../src/vocabulary.ts';
import { readTexts } from '../../../support/read-text.ts';

const fixtures = join('tests', 'fixtures');
const faults = join(fixtures, 'faults', '11-forged-parquet');
const refusal =
  'x.parquet: it is not a timeline written by this program. Write one from the logs with steadypair timeline, in the format parquet.';

async function refusalsOf(bytes: Uint8Array): Promise<readonly string[]> {
  const { files, failures } = await readTexts({ 'x.parquet': bytes });
  expect(files).toEqual([]);
  return failures.map((f) => f.message);
}

describe('a timeline with a right checksum that this program did not write', () => {
  test.each(readdirSync(faults))('%s is one line', async (name) => {
    expect(await refusalsOf(readFileSync(join(faults, name)))).toEqual([refusal]);
  });

  const row = '2026-03-14T10:00:00Z RO1-A light steady\n';
  type Forged = (file: ImportedFile) => ImportedFile;
  const input = (change: (input: ImportedFile['input']) => Partial<ImportedFile['input']>): Forged => {
    return (file) => ({ ...file, input: { ...file.input, ...change(file.input) } });
  };
  const changes = (change: (change: Change) => Partial<Change>): Forged => {
    return (file) => ({
      ...file,
      changes: changesFrom(allChanges(file.changes).map((c) => ({ ...c, ...change(c) }))),
    });
  };
  const forgeries: readonly (readonly [string, Forged])[] = [
    ['whose rows do not add up', input(({ rows }) => ({ rows: { ...rows, unchanged: 1 } }))],
    ['in a zone that is none', input(() => ({ zone: 'Mars/Olympus' }))],
    ['in an encoding that is none', input(() => ({ encoding: 'utf-7' }))],
    ['that ends before it begins', input(({ from }) => ({ to: (from ?? 0) - 1 }))],
    ['with a sum that is none', input(() => ({ sha256: 'none' }))],
    ['of the year 12000', input(() => ({ to: Date.UTC(12_000, 0) }))],
    ['with a value that its signal cannot have', changes(() => ({ value: 'purple' }))],
    ['with a change of no pair', changes(({ subject }) => ({ subject: { ...subject, pair: '' } }))],
    ['with a change that began after it happened', changes(({ time }) => ({ earliest: time + 1 }))],
    ['with a change in no line', changes(() => ({ line: 0 }))],
  ];
  test.each(forgeries)('%s is one line', async (_name, forge) => {
    const { files } = await readTexts({ 'a.log': row });
    expect(await refusalsOf(timelineParquet(files.map(forge), [], digestOf))).toEqual([refusal]);
  });
});

describe('a timeline of any log that can be read', () => {
  const names = readdirSync(fixtures, { recursive: true, encoding: 'utf8' }).filter((n) =>
    /\.(csv|log|txt)$/.test(n),
  );
  test.each(names)('comes back: %s', async (name) => {
    const read = await readTexts(
      { [name]: readFileSync(join(fixtures, name)) },
      { year: 2026, order: 'day-first' },
    );
    const { failures } = await readTexts({ 'x.parquet': timelineParquet(read.files, [], digestOf) });
    expect(failures).toEqual([]);
  });
});
