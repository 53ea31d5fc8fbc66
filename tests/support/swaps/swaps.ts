import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Dressed } from '../stories/dressing.ts';
import { dress } from '../stories/dressings.ts';
import { swapStory } from '../stories/swap-story.ts';
import { type Verified, verifyFiles } from '../verify-files.ts';
import { judgeSwap } from './judge-swap.ts';
import { count, emptyTally, type Tally } from './tally.ts';
import { tallyText } from './tally-text.ts';

/** What answers for some files: the program, or in a test something that is known to be wrong. */
export type Verifier = (dressed: Dressed) => Promise<Verified['swaps']>;

const program: Verifier = async ({ files, phrasebook }) => (await verifyFiles(files, phrasebook)).swaps;

/** Tells, dresses and verifies the swaps of so many seeds, and compares each answer with the truth. */
export async function countSwaps(swaps: number, first: number, verifier: Verifier = program): Promise<Tally> {
  const tally = emptyTally();
  for (let seed = first; seed < first + swaps; seed += 1) {
    const told = swapStory(seed);
    const dressed = dress(told.story, seed);
    count(tally, told, dressed, await verifier(dressed));
  }
  return tally;
}

/** `npm run swaps -- 10000 [FIRST]`, or `npm run swaps -- --again SEED` for one, its files in `out/swaps`. */
export async function runSwaps(number = '2000', second = '0'): Promise<string> {
  if (number === '--again') return again(Number(second));
  const begin = performance.now();
  const tally = await countSwaps(Number(number), Number(second));
  const seconds = (performance.now() - begin) / 1000;
  return `${number} swaps from seed ${second}, ${(Number(number) / seconds).toFixed(0)} a second\n\n${tallyText(tally)}`;
}

async function again(seed: number): Promise<string> {
  const told = swapStory(seed);
  const dressed = dress(told.story, seed);
  const folder = join('out', 'swaps', String(seed));
  mkdirSync(folder, { recursive: true });
  const phrasebook = dressed.phrasebook === null ? {} : { 'phrasebook.yaml': dressed.phrasebook };
  for (const [name, text] of Object.entries({ ...dressed.files, ...phrasebook }))
    writeFileSync(join(folder, name), text);
  const swaps = await program(dressed);
  const said = swaps.flatMap(({ verdict, checks }) => [
    verdict,
    ...checks.map((c) => `  ${c.status} ${c.id}: ${c.statement}`),
  ]);
  const broken = told.truth.checks
    .filter((c) => c.holds !== true)
    .map((c) => `${c.id} (${c.holds === null ? 'undecided' : 'broken'})`);
  const events = told.story.events.map(
    (e) => `  ${new Date(e.time).toISOString()} ${e.half ?? ' '} ${e.signal} ${e.value ?? ''}`,
  );
  return [
    `${folder}: ${told.fault?.id ?? 'good'}, ${dressed.id}`,
    ...events,
    `truth: ${broken.join(', ') || 'every check holds'}`,
    ...said,
    ...judgeSwap(told, dressed, swaps).map(({ kind, about }) => `${kind}: ${about}`),
  ].join('\n');
}
