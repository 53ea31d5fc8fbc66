import { program } from '../support/relations/command.ts';
import { again, bothFuzzed, type Fuzzed, fuzz, fuzzText } from './fuzz.ts';
import { inHalves } from './in-halves.ts';
import { bothRelated, fuzzRelations, type Related } from './relations/fuzz-relations.ts';
import { keepFiles } from './relations/keep-files.ts';
import { relatedAgain, relatedText } from './relations/related-text.ts';

const here = 'tests/fuzz/command.ts';

/**
 * `npm run fuzz -- 100000 [FIRST]` puts so many inputs through the program, `npm run fuzz -- --again FILE` one that was kept;
 * `npm run fuzz -- relations 20000 [FIRST]` changes so many exports, `npm run fuzz -- relations --again NUMBER` one of them.
 */
export async function runFuzz(...args: readonly string[]): Promise<string> {
  const [what = '2000', second = '0', third = '0'] = args;
  if (what === '--again') return again(second);
  if (what !== 'relations') return fuzzInputs(numberOf(what), numberOf(second));
  if (second === '--again') return relatedAgain(numberOf(third));
  return changeExports(numberOf(args[1] ?? '2000'), numberOf(third));
}

async function fuzzInputs(count: number, first: number): Promise<string> {
  const [one, other] = await inHalves(here, 'fuzzHalf', count, first);
  const [low, high]: readonly [Fuzzed, Fuzzed] = [JSON.parse(one), JSON.parse(other)];
  const found = bothFuzzed(low, high);
  if (found.failures.length > 0) process.exitCode = 1;
  return fuzzText(found);
}

async function changeExports(count: number, first: number): Promise<string> {
  const [one, other] = await inHalves(here, 'relationsHalf', count, first);
  const [low, high]: readonly [Related, Related] = [JSON.parse(one), JSON.parse(other)];
  const found = bothRelated(low, high);
  if (found.failures.length > 0) process.exitCode = 1;
  return relatedText(found);
}

/** What one of two processes does. */
export function fuzzHalf(count: string, first: string): Promise<Fuzzed> {
  return fuzz(Number(count), Number(first));
}

/** What one of two processes does. */
export function relationsHalf(count: string, first: string): Promise<Related> {
  return fuzzRelations(Number(count), Number(first), program, keepFiles);
}

function numberOf(text: string): number {
  if (!/^\d+$/.test(text)) throw new RangeError(`"${text}" is no count: give a whole number such as 2000.`);
  return Number(text);
}
