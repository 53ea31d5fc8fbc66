import { readdirSync, readFileSync, statSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readTexts } from '../../support/read-text.ts';

function filesIn(folder: string): readonly string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = `${folder}/${name}`;
    return statSync(path).isDirectory() ? filesIn(path) : [path];
  });
}

/** The fixtures tell of these pairs, and of no other. */
const told = new Set(['RO1', 'RO2', 'ZZ9']);
const texts = [...filesIn('tests/fixtures/shapes'), ...filesIn('tests/fixtures/faults')].filter((path) =>
  /\.(?:csv|log|jsonl|txt)$/.test(path),
);

test('no reading of any fixture, without a phrasebook, makes a pair that it does not tell of', async () => {
  const found: string[] = [];
  for (const path of texts) {
    const { files } = await readTexts({ [path]: readFileSync(path) });
    for (const { streams } of files) found.push(...streams.map((s) => s.subject.pair));
  }
  expect(texts.length).toBeGreaterThan(30);
  expect([...new Set(found)].filter((pair) => pair !== '' && !told.has(pair))).toEqual([]);
  expect(new Set(found)).toContain('RO1');
});
