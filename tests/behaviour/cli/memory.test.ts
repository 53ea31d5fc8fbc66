import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeBig } from '../../../samples/big.ts';

/** Peak memory of a whole process, in kilobytes, as the process itself reads it from the system when it ends. */
function peakOf(file: string): number {
  const hook =
    'data:text/javascript,process.on("exit",()=>process.stderr.write("peak "+process.resourceUsage().maxRSS))';
  const args = ['--import', hook, 'dist/steadypair.mjs', 'verify', file];
  const { stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', maxBuffer: 1e8 });
  return Number(/peak (\d+)/.exec(stderr)?.[1]);
}

test('a poll export of 200 MB is verified below 250 MB of memory', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'big-'));
  const file = join(folder, 'big.csv');
  const { bytes } = await writeBig(file, '200');
  const peak = peakOf(file);
  rmSync(folder, { recursive: true });
  console.log(`peak memory for ${(bytes / 1e6).toFixed(0)} MB: ${(peak / 1000).toFixed(0)} MB`);
  expect(bytes).toBeGreaterThan(200e6);
  expect(peak).toBeGreaterThan(30_000);
  expect(peak).toBeLessThan(250_000);
}, 120_000);
