import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fuzz, fuzzText, hangMs, inputOf } from './fuzz.ts';
import { putThrough } from './put-through.ts';
import { seeds } from './seeds.ts';

const fixtures = join('tests', 'fixtures', 'fuzz');

test('1,200 mutated inputs: nothing crashes, hangs, or counts wrongly', async () => {
  const found = await fuzz(1200);
  console.log(fuzzText(found));
  expect(found.failures).toEqual([]);
}, 180_000);

test.each(seeds())('$kind as it is can be used', async (seed) => {
  const [company] = seeds();
  if (company === undefined) throw new Error('There are no seeds.');
  expect(await putThrough(seed, company, true)).toBe('used');
});

test('an input is the same for the same number', () => {
  const all = seeds();
  for (const number of [0, 7, 1234]) expect(inputOf(number, all)).toEqual(inputOf(number, all));
  for (let number = 0; number < 200; number += 1) inputOf(number, all);
  expect(all).toEqual(seeds());
});

describe('what failed once is read or refused', () => {
  test.each(readdirSync(fixtures))('%s', async (file) => {
    const [company] = seeds();
    const name = file.replace(/^[a-z-]+\./, '');
    const seed = seeds().find((s) => s.name === name);
    if (company === undefined || seed === undefined) throw new Error(`${file} is named after no seed.`);
    const bytes = readFileSync(join(fixtures, file));
    const begin = performance.now();
    expect(['used', 'refused']).toContain(await putThrough({ ...seed, bytes }, company, true));
    expect(performance.now() - begin).toBeLessThan(hangMs);
  });
});
