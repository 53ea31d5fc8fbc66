import { availableParallelism } from 'node:os';
import process from 'node:process';
import { parseArgs } from 'node:util';
import { seeded } from '../../samples/random.ts';
import { type Hand, hire } from './hand.ts';
import type { Mutant } from './mutate.ts';
import { mutatedFiles, refusalOf } from './sources.ts';
import type { Recorded } from './worker.ts';

/** `unreached`: no test comes by its place; `at load`: only the loading of the code does, where no mutant is on. */
type End = 'killed' | 'hung' | 'lived' | 'unreached' | 'at load';
type Placed = Mutant & { readonly file: string };

/** How long one run of every test without a mutant may take. */
const recordMs = 600_000;

/**
 * `npm run mutants -- FOLDER [--all | --sample N --seed S] [--within SECONDS]`: which mutants of src/FOLDER its own tests let live.
 * `--within` leaves out tests that take longer: what lives then might not have lived with them.
 */
export async function runMutants(...args: readonly string[]): Promise<string> {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      all: { type: 'boolean' },
      sample: { type: 'string' },
      seed: { type: 'string', default: '1' },
      within: { type: 'string' },
    },
  });
  const [folder = ''] = positionals;
  const refusal = refusalOf(folder);
  if (refusal !== null) {
    process.exitCode = 1;
    return refusal;
  }
  const all = [...mutatedFiles(folder).values()].flatMap(({ file, mutants }) =>
    mutants.map((mutant): Placed => ({ ...mutant, file })),
  );
  const wanted =
    values.sample === undefined ? all : sampleOf(all, Number(values.sample), Number(values.seed));
  const within = Number(values.within ?? Number.POSITIVE_INFINITY);
  const { ends, slow } = await tryAll(folder, wanted, within * 1000);
  const of = wanted.length < all.length ? ` of ${all.length} (seed ${values.seed})` : '';
  return `src/${folder}: ${wanted.length} mutants${of}; ${said(wanted, ends)}${slow.map((name) => `\nleft out, too slow: ${name}`).join('')}`;
}

/** Some of the mutants, the same for the same seed, in their order. */
function sampleOf(all: readonly Placed[], count: number, seed: number): readonly Placed[] {
  const random = seeded(seed);
  const drawn = all.map((mutant) => ({ mutant, key: random() })).sort((a, b) => a.key - b.key);
  return drawn
    .slice(0, count)
    .map(({ mutant }) => mutant)
    .sort((a, b) => a.id - b.id);
}

interface Tried {
  readonly ends: ReadonlyMap<number, End>;
  /** The tests that were left out. */
  readonly slow: readonly string[];
}

async function tryAll(folder: string, wanted: readonly Placed[], mostMs: number): Promise<Tried> {
  const first = await hire(folder);
  const recorded = await first.ask({ mutant: null }, recordMs);
  if (recorded?.kind !== 'recorded') throw new Error('A test fails without a mutant: see vitest.');
  // The quickest tests first: most mutants do not outlive them.
  const known = recorded.tests.map((test, place) => ({ ...test, place }));
  known.sort((a, b) => a.milliseconds - b.milliseconds);
  const tests = known.filter((test) => test.milliseconds <= mostMs);
  const atLoad = new Set(recorded.atLoad);
  const ends = new Map<number, End>();
  const queue = wanted.values();
  const lane = async (start: Hand): Promise<void> => {
    let hand = start;
    for (const { id } of queue) {
      const by = tests.filter((test) => test.reached.includes(id));
      const end = by.length > 0 ? await tryOne(hand, id, by) : atLoad.has(id) ? 'at load' : 'unreached';
      if (end === 'hung') hand = await hire(folder);
      ends.set(id, end);
      if (ends.size % 50 === 0) process.stderr.write(`${ends.size} of ${wanted.length} tried\n`);
    }
    hand.leave();
  };
  const others = Array.from({ length: availableParallelism() - 1 }, async () => lane(await hire(folder)));
  await Promise.all([lane(first), ...others]);
  return { ends, slow: known.slice(tests.length).map((test) => test.name) };
}

async function tryOne(
  hand: Hand,
  mutant: number,
  by: readonly (Recorded & { readonly place: number })[],
): Promise<End> {
  for (const { place, milliseconds } of by) {
    const answer = await hand.ask({ mutant, place }, 2000 + 10 * milliseconds);
    if (answer?.kind !== 'tried') return 'hung';
    if (!answer.passed) return 'killed';
  }
  return 'lived';
}

function said(wanted: readonly Placed[], ends: ReadonlyMap<number, End>): string {
  const count = (...of: readonly End[]): number =>
    [...ends.values()].filter((end) => of.includes(end)).length;
  const tried = wanted.length - count('at load');
  const killed = count('killed', 'hung');
  const lived = wanted.filter(({ id }) => ends.get(id) === 'lived' || ends.get(id) === 'unreached');
  const lines = lived.map(({ id, file, line, from, to }) => {
    const unreached = ends.get(id) === 'unreached' ? '  (no test comes by)' : '';
    return `${file}:${line}  ${short(from)}  ->  ${short(to)}${unreached}`;
  });
  const share = tried === 0 ? 0 : (100 * killed) / tried;
  return [
    `${killed} of ${tried} killed (${share.toFixed(1)} %; ${count('hung')} of them hung)`,
    `${count('at load')} in what runs only while the code loads were left out`,
    `${lived.length} lived:`,
    ...lines,
  ].join('\n');
}

function short(text: string): string {
  const line = text.replaceAll(/\s+/g, ' ');
  return line.length <= 90 ? line : `${line.slice(0, 60)} … ${line.slice(-27)}`;
}
