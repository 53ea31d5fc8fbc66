import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeBig } from '../../samples/big.ts';
import { agree, measure } from './bench.ts';

test('every program of the benchmark finds the same changes with the same bounds', async () => {
  const input = join(mkdtempSync(join(tmpdir(), 'bench-')), 'poll.csv');
  const { changes } = await writeBig(input, '2', '8', '0.01');
  const measured = measure(input);
  expect(measured.length).toBeGreaterThanOrEqual(3);
  expect(measured.map((m) => [m.program.name, m.changes])).toEqual(
    measured.map((m) => [m.program.name, m.program.name.includes('floor') ? 0 : changes]),
  );
  expect(agree(measured)).toBe(true);
}, 120_000);
