import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeBig } from '../../../samples/big.ts';
import type { BigExport } from '../../../samples/write-polls.ts';

async function written(...options: readonly string[]): Promise<BigExport & { readonly text: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'big-'));
  const file = join(folder, 'big.csv');
  const [megabytes = '1', pairs, share, seed] = options;
  const told = await writeBig(file, megabytes, pairs, share, seed);
  const text = readFileSync(file, 'utf8');
  rmSync(folder, { recursive: true });
  return { ...told, text };
}

/** Counts rows and changes by reading the export plainly. */
function counted(text: string): { readonly rows: number; readonly changes: number } {
  const last = new Map<string, string>();
  let changes = 0;
  const rows = text.trimEnd().split('\n').slice(1);
  for (const row of rows) {
    const [, unit, parameter, value = ''] = row.split(',');
    const before = last.get(`${unit} ${parameter}`);
    if (before !== undefined && before !== value) changes += 1;
    last.set(`${unit} ${parameter}`, value);
  }
  return { rows: rows.length, changes };
}

test.each(['0', '0.024', '1'])(
  'a big export with a share of %s changes holds what it says',
  async (share) => {
    const { text, bytes, rows, changes } = await written('2', '3', share);
    expect(Buffer.byteLength(text)).toBe(bytes);
    expect(bytes).toBeGreaterThanOrEqual(2_000_000);
    expect(counted(text)).toEqual({ rows, changes });
    // Binomial: the mean is rows * share; five standard deviations are let pass. The first readings can not change.
    const cases = rows - 9;
    const deviation = Math.sqrt(cases * Number(share) * (1 - Number(share)));
    expect(Math.abs(changes - cases * Number(share))).toBeLessThanOrEqual(5 * deviation);
  },
);

test('a big export is the same for the same seed only', async () => {
  const [first, again, other] = [
    await written('1'),
    await written('1'),
    await written('1', '8', '0.001', '2'),
  ];
  expect(again.text).toBe(first.text);
  expect(other.text).not.toBe(first.text);
});
