import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { seeded } from '../../samples/random.ts';
import { mutate } from './mutate.ts';
import { putThrough } from './put-through.ts';
import { type Seed, seeds } from './seeds.ts';

/** How many inputs of a kind were used, and how many refused. */
interface Kind {
  readonly kind: string;
  readonly used: number;
  readonly refused: number;
}

/** What came of some inputs. */
export interface Fuzzed {
  readonly inputs: number;
  readonly byKind: readonly Kind[];
  readonly slowest: { readonly number: number; readonly milliseconds: number };
  readonly peakMegabytes: number;
  readonly failures: readonly { readonly number: number; readonly kind: string; readonly what: string }[];
}

/** What takes so long hangs: ten times as long as the slowest input took. */
export const hangMs = 15_000;
/** Of so many inputs one goes through every report too. */
const everyReport = 16;
const kept = join('out', 'fuzz');

/** The input of a number: the same on every computer. */
export function inputOf(number: number, all: readonly Seed[]): Seed {
  const random = seeded(number);
  const seed = all[number % all.length];
  const other = all[Math.floor(random() * all.length)];
  if (seed === undefined || other === undefined) throw new RangeError('There are no seeds.');
  return { ...seed, bytes: mutate(seed.bytes, random, other.bytes) };
}

/** Puts the inputs of `count` numbers from `first` on through the program; those that fail are kept in out/fuzz. */
export async function fuzz(count: number, first = 0): Promise<Fuzzed> {
  const all = seeds();
  const company = all[0];
  if (company === undefined) throw new RangeError('There are no seeds.');
  const byKind = new Map(all.map(({ kind }) => [kind, { kind, used: 0, refused: 0 }]));
  const failures: { number: number; kind: string; what: string }[] = [];
  let slowest = { number: first, milliseconds: 0 };
  let peak = 0;
  for (let number = first; number < first + count; number += 1) {
    const input = inputOf(number, all);
    const begin = process.cpuUsage();
    const fail = (what: string): void => {
      failures.push({ number, kind: input.kind, what });
      mkdirSync(kept, { recursive: true });
      writeFileSync(join(kept, `${number}-${input.name}`), input.bytes);
    };
    try {
      const end = await putThrough(input, company, number % everyReport === 0);
      const counts = byKind.get(input.kind);
      if (counts !== undefined) counts[end] += 1;
    } catch (error) {
      fail(error instanceof Error ? (error.stack ?? error.message) : String(error));
    }
    const { user, system } = process.cpuUsage(begin);
    // The time of this process, not of the clock: what else the computer does hangs nothing.
    const milliseconds = (user + system) / 1000;
    if (milliseconds > slowest.milliseconds) slowest = { number, milliseconds };
    if (milliseconds > hangMs) fail(`It took ${Math.round(milliseconds)} ms.`);
    if (number % 100 === 0) peak = Math.max(peak, process.memoryUsage().rss);
  }
  const peakMegabytes = Math.round(peak / 1e6);
  return { inputs: count, byKind: [...byKind.values()], slowest, peakMegabytes, failures };
}

/** What the counts say, a line each. */
export function fuzzText({ inputs, byKind, slowest, peakMegabytes, failures }: Fuzzed): string {
  const kinds = byKind.map(
    ({ kind, used, refused }) =>
      `  ${kind.padEnd(16)} ${String(used).padStart(7)} used ${String(refused).padStart(7)} refused`,
  );
  return [
    `${inputs} inputs`,
    ...kinds,
    `slowest: ${Math.round(slowest.milliseconds)} ms (input ${slowest.number}); memory at most ${peakMegabytes} MB a process`,
    ...failures.map(({ number, kind, what }) => `FAILED ${number} (${kind}): ${what}`),
    `${failures.length} failed`,
  ].join('\n');
}

/** What two runs found, as if they were one; memory is that of the larger. */
export function bothFuzzed(one: Fuzzed, other: Fuzzed): Fuzzed {
  const byKind = one.byKind.map(({ kind, used, refused }) => {
    const more = other.byKind.find((k) => k.kind === kind);
    return { kind, used: used + (more?.used ?? 0), refused: refused + (more?.refused ?? 0) };
  });
  return {
    inputs: one.inputs + other.inputs,
    byKind,
    slowest: one.slowest.milliseconds > other.slowest.milliseconds ? one.slowest : other.slowest,
    peakMegabytes: Math.max(one.peakMegabytes, other.peakMegabytes),
    failures: [...one.failures, ...other.failures],
  };
}

/** Puts an input that was kept through the program and every report once more. */
export async function again(file: string): Promise<string> {
  const name = basename(file).replace(/^\d+-/, '');
  const seed = seeds().find((s) => s.name === name);
  const company = seeds()[0];
  if (seed === undefined || company === undefined) throw new RangeError(`${name} is the name of no seed.`);
  return putThrough({ ...seed, bytes: readFileSync(file) }, company, true);
}
