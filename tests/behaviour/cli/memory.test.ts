import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeBig } from '../../../samples/big.ts';
import { runBuilt } from '../../support/run-built.ts';

test('a poll export of 200 MB is verified below 250 MB of memory', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'big-'));
  const file = join(folder, 'big.csv');
  const { bytes } = await writeBig(file, '200');
  const { peakMegabytes } = runBuilt('verify', file);
  rmSync(folder, { recursive: true });
  console.log(`peak memory for ${(bytes / 1e6).toFixed(0)} MB: ${peakMegabytes.toFixed(0)} MB`);
  expect(bytes).toBeGreaterThan(200e6);
  expect(peakMegabytes).toBeGreaterThan(30);
  expect(peakMegabytes).toBeLessThan(250);
}, 120_000);
