import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { writeBig } from '../../samples/big.ts';
import { stateParameters, writeMovingGauges } from '../../samples/moving-gauges.ts';
import { alternate } from './alternate.ts';
import { type Bench, type Found, folder } from './bench-case.ts';
import { changesOf, type Program, programs, type Taken } from './programs.ts';

/** What a program took for a poll, and how many changes it found; their digest is empty for a program that looks for none. */
export interface Measured {
  readonly program: Program;
  readonly taken: Taken;
  readonly changes: number;
  readonly digest: string;
}

/** One kind of poll. */
interface Poll {
  readonly id: string;
  readonly job: string;
  /** The parameters that are states; none where all are. */
  readonly states: readonly string[];
  write(file: string, megabytes: string): Promise<unknown>;
}

const polls: readonly Poll[] = [
  {
    id: 'quiet',
    job: 'poll, 0.02 % of the rows are changes',
    states: [],
    write: (file, megabytes) => writeBig(file, megabytes, '8', '0.0002'),
  },
  {
    id: 'gauges',
    job: 'poll with moving gauges',
    states: stateParameters,
    write: (file, megabytes) => writeMovingGauges(file, megabytes),
  },
  {
    id: 'dense',
    job: 'poll, 2.4 % of the rows are changes',
    states: [],
    write: (file, megabytes) => writeBig(file, megabytes, '8', '0.024'),
  },
];

/** `timeline` over three polls beside others that find the same changes; C is the yardstick. */
export const pollBench: Bench = {
  id: 'polls',
  async measure(megabytes) {
    const found: Found[] = [];
    for (const poll of polls) found.push(await measurePoll(poll, megabytes));
    return {
      rows: found.flatMap(({ rows }) => rows),
      notes: found.flatMap(({ notes }) => notes),
      agrees: found.every(({ agrees }) => agrees === true),
    };
  },
};

async function measurePoll({ job, id, states, write }: Poll, megabytes: number): Promise<Found> {
  const input = await pollFile(`poll-${id}-${megabytes}.csv`, (file) => write(file, String(megabytes)));
  const measured = measure(input, states);
  const c = measured.find(({ program }) => program.name.startsWith('C,'));
  const yardstick = c === undefined ? null : { name: 'C', seconds: c.taken.seconds };
  const amount = { count: statSync(input).size / 1e6, unit: 'MB' } as const;
  const rows = measured.map(({ program, taken }) => ({
    job,
    program: program.name,
    seconds: taken.seconds,
    amount,
    megabytes: taken.megabytes,
    yardstick,
  }));
  const counts = measured
    .filter(({ program }) => !isFloor(program))
    .map(({ program, changes, digest }) => `${program.name} ${changes} (${digest})`);
  const agrees = agree(measured);
  return { rows, notes: agrees ? [] : [`Changes of the ${job}: ${counts.join(', ')}.`], agrees };
}

/** The file of that name in the folder of the benches, written unless it is there. */
export async function pollFile(name: string, write: (file: string) => Promise<unknown>): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, name);
  if (!existsSync(file)) await write(file);
  return file;
}

/** Runs every program that is there on an input; `states` names its parameters that are states, none where all are. */
export function measure(input: string, states: readonly string[] = []): readonly Measured[] {
  mkdirSync(folder, { recursive: true });
  const there = programs.filter((program) => program.isThere());
  const out = (place: number): string => join(folder, `changes-${place}.csv`);
  const taken = alternate(
    there.map((program, place) => ({ command: program.command(input, out(place), states) })),
  );
  return there.flatMap((program, place) => {
    const best = taken[place];
    if (best === undefined) return [];
    const changes = isFloor(program) ? [] : changesOf(program, best, out(place));
    const digest = createHash('sha256').update(changes.join('\n')).digest('hex').slice(0, 12);
    return [{ program, taken: best, changes: changes.length, digest }];
  });
}

function isFloor({ name }: Program): boolean {
  return name.includes('floor');
}

/** True where all programs found the same changes with the same bounds. */
export function agree(measured: readonly Measured[]): boolean {
  return new Set(measured.filter((m) => !isFloor(m.program)).map((m) => m.digest)).size === 1;
}
