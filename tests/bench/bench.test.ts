import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeBig } from '../../samples/big.ts';
import { stateParameters, writeMovingGauges } from '../../samples/moving-gauges.ts';
import { agree, measure } from './polls.ts';

const folder = mkdtempSync(join(tmpdir(), 'bench-'));

test.each([
  ['of states that change seldom', (file: string) => writeBig(file, '2', '8', '0.0002'), []],
  ['of states that change often', (file: string) => writeBig(file, '2', '8', '0.024'), []],
  [
    'with moving gauges',
    (file: string) => writeMovingGauges(file, '2', '50', '0.05', '0.01'),
    stateParameters,
  ],
])(
  'every program of the benchmark finds the same changes with the same bounds in a poll %s',
  async (name, write, states) => {
    const input = join(folder, `${name}.csv`);
    const { changes } = await write(input);
    expect(changes).toBeGreaterThan(0);
    const measured = measure(input, states);
    expect(measured.length).toBeGreaterThanOrEqual(3);
    expect(measured.map((m) => [m.program.name, m.changes])).toEqual(
      measured.map((m) => [m.program.name, m.program.name.includes('floor') ? 0 : changes]),
    );
    expect(agree(measured)).toBe(true);
  },
  120_000,
);
