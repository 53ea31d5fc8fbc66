/**
 * Whole reports, byte for byte. They were read by a person; after a wanted change write them anew with
 * `UPDATE_GOLDEN=1 npx vitest run tests/golden`, and read the difference.
 */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { steadypair } from '../support/run-command.ts';
import { verifySample } from '../support/verify-sample.ts';

async function textOf(
  folder: 'clean-swap' | 'bad-swap',
): Promise<{ readonly text: string; readonly markdown: string }> {
  const out = mkdtempSync(join(tmpdir(), 'golden-'));
  const text = await verifySample(folder, out);
  const [report = ''] = text.match(/\S+\.md$/m) ?? [];
  return { text: text.replaceAll(out, 'OUT'), markdown: readFileSync(report, 'utf8') };
}

function compare(folder: string, text: string, markdown: string): void {
  for (const [name, found] of [
    [`${folder}.txt`, text],
    [`${folder}.md`, markdown],
  ] as const) {
    const file = join('tests', 'golden', name);
    if (process.env.UPDATE_GOLDEN === '1') writeFileSync(file, found);
    expect(found).toBe(readFileSync(file, 'utf8'));
  }
}

async function diagnosisOf(): Promise<{ readonly text: string; readonly markdown: string }> {
  const out = mkdtempSync(join(tmpdir(), 'golden-'));
  const logs = join('samples', 'marrow-bay', 'wont-sync');
  const phrasebook = join(logs, 'phrasebook.yaml');
  const { out: text } = await steadypair('diagnose', logs, '--phrasebook', phrasebook, '--out', out);
  const [report = ''] = text.match(/\S+\.md$/m) ?? [];
  return { text: text.replaceAll(out, 'OUT'), markdown: readFileSync(report, 'utf8') };
}

afterEach(() => {
  vi.useRealTimers();
});

test('the work sheet before a swap prints and reports what was read and found good', async () => {
  vi.setSystemTime(Date.parse('2026-03-14T09:00:00Z'));
  const out = mkdtempSync(join(tmpdir(), 'golden-'));
  const site = join('samples', 'marrow-bay', 'clean-swap');
  const { out: text } = await steadypair(
    'prepare',
    join('samples', 'marrow-bay-before'),
    ...['ro2', 'ro3', 'ro4'].map((pair) => join('samples', 'marrow-bay-fleet', `${pair}.parquet`)),
    ...['--pair', 'RO1', '--phrasebook', join(site, 'phrasebook.yaml')],
    ...['--job', join(site, 'job.yaml'), '--out', out],
  );
  const [report = ''] = text.match(/\S+\.md$/m) ?? [];
  compare('before-swap', text.replaceAll(out, 'OUT'), readFileSync(report, 'utf8'));
});

describe('wont-sync', () => {
  test('prints and reports what was read and found good', async () => {
    const { text, markdown } = await diagnosisOf();
    compare('wont-sync', text, markdown);
  });
});

test('the fleet prints and reports what was read and found good', async () => {
  const out = mkdtempSync(join(tmpdir(), 'golden-'));
  const { out: text } = await steadypair('fleet', join('samples', 'marrow-bay-fleet'), '--out', out);
  compare('fleet', text.replaceAll(out, 'OUT'), readFileSync(join(out, 'fleet.md'), 'utf8'));
});

describe.each(['clean-swap', 'bad-swap'] as const)('%s', (folder) => {
  test('prints and reports what was read and found good', async () => {
    const { text, markdown } = await textOf(folder);
    compare(folder, text, markdown);
  });
});
