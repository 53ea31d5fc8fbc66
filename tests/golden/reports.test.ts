/**
 * Whole reports, byte for byte. They were read by a person; after a wanted change write them anew with
 * `UPDATE_GOLDEN=1 npx vitest run tests/golden`, and read the difference.
 */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { verifySample } from '../support/verify-sample.ts';

async function textOf(
  folder: 'clean-swap' | 'bad-swap',
): Promise<{ readonly text: string; readonly markdown: string }> {
  const out = mkdtempSync(join(tmpdir(), 'golden-'));
  const text = await verifySample(folder, out);
  const [report = ''] = text.match(/\S+\.md$/m) ?? [];
  return { text: text.replaceAll(out, 'OUT'), markdown: readFileSync(report, 'utf8') };
}

describe.each(['clean-swap', 'bad-swap'] as const)('%s', (folder) => {
  test('prints and reports what was read and found good', async () => {
    const { text, markdown } = await textOf(folder);
    for (const [name, found] of [
      [`${folder}.txt`, text],
      [`${folder}.md`, markdown],
    ] as const) {
      const file = join('tests', 'golden', name);
      if (process.env.UPDATE_GOLDEN === '1') writeFileSync(file, found);
      expect(found).toBe(readFileSync(file, 'utf8'));
    }
  });
});
