/** One character again and again, wherever it stands in an export, keeps nobody waiting: no pattern goes back over it. */
import { expect, test } from 'vitest';
import { hangMs } from '../fuzz/fuzz.ts';
import { putThrough } from '../fuzz/put-through.ts';
import { type Seed, seeds } from '../fuzz/seeds.ts';

/** So many take a pattern that goes back over them half a minute. */
const often = 80_000;
const characters = [' ', '\r', '0', 'a', '"', '-'];
const archives = ['gzip', 'zip', 'stored timeline', 'phrasebook', 'job'];
const places = 5;

const texts = seeds().filter(({ kind }) => !archives.includes(kind));

/** The places behind the words of the first rows. */
function placesIn({ bytes }: Seed): readonly number[] {
  const [header = '', ...rows] = new TextDecoder('latin1').decode(bytes).split('\n');
  const words = [...rows.slice(0, 2).join('\n').matchAll(/\w+/g)];
  return words.map((word) => header.length + 1 + word.index + word[0].length).slice(0, places);
}

test.each(texts)(
  'in $kind',
  async (seed) => {
    const [company] = seeds();
    if (company === undefined) throw new Error('There are no seeds.');
    const slow: string[] = [];
    for (const character of characters)
      for (const place of placesIn(seed)) {
        const run = new TextEncoder().encode(character.repeat(often));
        const bytes = Uint8Array.from([
          ...seed.bytes.subarray(0, place),
          ...run,
          ...seed.bytes.subarray(place),
        ]);
        const begin = performance.now();
        await putThrough({ ...seed, bytes }, company, false);
        const milliseconds = performance.now() - begin;
        if (milliseconds > hangMs) slow.push(`${JSON.stringify(character)} at ${place}: ${milliseconds} ms`);
      }
    expect(slow).toEqual([]);
  },
  300_000,
);
