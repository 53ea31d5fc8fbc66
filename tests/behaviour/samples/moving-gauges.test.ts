import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { stateParameters, writeMovingGauges } from '../../../samples/moving-gauges.ts';
import type { BigExport } from '../../../samples/write-polls.ts';

async function written(...options: readonly string[]): Promise<BigExport & { readonly text: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'moving-gauges-'));
  const file = join(folder, 'poll.csv');
  const [megabytes = '1', pairs, moves, share, seed] = options;
  const told = await writeMovingGauges(file, megabytes, pairs, moves, share, seed);
  const text = readFileSync(file, 'utf8');
  rmSync(folder, { recursive: true });
  return { ...told, text };
}

/** Counts readings, and those that differ from the one before, of states and of gauges, by reading the export plainly. */
function counted(text: string): Record<'states' | 'changes' | 'gauges' | 'moves' | 'first', number> {
  const last = new Map<string, string>();
  const count = { states: 0, changes: 0, gauges: 0, moves: 0, first: 0 };
  for (const row of text.trimEnd().split('\n').slice(1)) {
    const [, unit, parameter = '', value = ''] = row.split(',');
    const before = last.get(`${unit} ${parameter}`);
    const isState = stateParameters.includes(parameter);
    count[isState ? 'states' : 'gauges'] += 1;
    if (before === undefined) count.first += 1;
    else if (before !== value) count[isState ? 'changes' : 'moves'] += 1;
    last.set(`${unit} ${parameter}`, value);
  }
  return count;
}

test.each([
  ['0', '0'],
  ['0.05', '0.0002'],
  ['1', '0.024'],
])(
  'a poll in which gauges move with a chance of %s and states change with one of %s holds what it says',
  async (moves, share) => {
    const { text, bytes, rows, changes } = await written('2', '7', moves, share);
    const found = counted(text);
    expect(Buffer.byteLength(text)).toBe(bytes);
    expect(bytes).toBeGreaterThanOrEqual(2_000_000);
    expect(found.states + found.gauges).toBe(rows);
    expect(found.changes).toBe(changes);
    expect([found.first, found.states / 6]).toEqual([70, found.gauges / 4]);
    // Binomial: five standard deviations are let pass. The first readings can not differ from one before.
    const isNear = (differ: number, cases: number, chance: number): boolean =>
      Math.abs(differ - cases * chance) <= 5 * Math.sqrt(cases * chance * (1 - chance));
    expect(isNear(found.moves, found.gauges - 28, Number(moves))).toBe(true);
    expect(isNear(found.changes, found.states - 42, Number(share))).toBe(true);
  },
);

test('a poll with moving gauges is the same for the same seed only', async () => {
  const [first, again, other] = [
    await written('1'),
    await written('1'),
    await written('1', '50', '0.05', '0.0002', '2'),
  ];
  expect(again.text).toBe(first.text);
  expect(other.text).not.toBe(first.text);
});
