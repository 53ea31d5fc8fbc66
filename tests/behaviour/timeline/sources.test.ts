import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { verify } from '../../../src/pipeline.ts';
import type { Swap } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../../support/read-text.ts';

const folder = 'samples/marrow-bay/clean-swap/';
const text = (name: string): string => readFileSync(folder + name, 'utf8');

async function swapFrom(...names: readonly string[]): Promise<Swap> {
  const files = Object.fromEntries(names.map((name) => [name, text(name)]));
  const analysed = await analyseTexts(files, { phrasebook: text('phrasebook.yaml') });
  const [swap] = verify(analysed, null, { from: null, to: null }, null).swaps;
  if (swap === undefined) throw new Error('no swap');
  return swap;
}

const width = (swap: Swap): number =>
  swap.bringUps
    .filter((b) => b.outcome === 'settled')
    .reduce((sum, b) => sum + ((b.light.high ?? 0) - (b.light.low ?? 0)), 0);

describe('the clean swap', () => {
  const all = ['ro1-poll.csv', 'ro1-journal.csv', 'ro1-events.log', 'ro1-notes.txt'];

  test.each([...all.slice(0, 3).map((name) => [name]), all])('is verified from %s', async (...names) => {
    expect((await swapFrom(...names)).verdict).toBe('verified');
  });

  test('every exact duration of the journal lies inside the bounds of the poll; together they are tighter', async () => {
    const [poll, journal, both] = await Promise.all([
      swapFrom('ro1-poll.csv'),
      swapFrom('ro1-journal.csv'),
      swapFrom(...all),
    ]);
    const settled = (swap: Swap): Swap['bringUps'] => swap.bringUps.filter((b) => b.outcome === 'settled');
    expect(settled(poll)).toHaveLength(2);
    settled(poll).forEach((bringUp, index) => {
      const exact = settled(journal)[index];
      for (const measure of ['sync', 'light'] as const) {
        const seconds = exact?.[measure].seconds ?? Number.NaN;
        expect(exact?.[measure].low).toBe(seconds);
        expect(bringUp[measure].low ?? Number.NaN).toBeLessThanOrEqual(seconds);
        expect(bringUp[measure].high ?? Number.NaN).toBeGreaterThanOrEqual(seconds);
      }
    });
    expect(width(both)).toBeLessThan(width(poll));
  });

  test('measures what was injected: steady 262.306 s and 271.894 s after the reflashes', async () => {
    const { bringUps } = await swapFrom('ro1-journal.csv');
    expect(
      bringUps.filter((b) => b.outcome === 'settled').map((b) => [b.sync.seconds, b.light.seconds]),
    ).toEqual([
      [142.412, 262.306],
      [151.733, 271.894],
    ]);
  });
});
