import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { writeBig } from '../../samples/big.ts';
import { changesOf, type Program, programs, type Taken, timed } from './programs.ts';

const folder = join('out', 'bench');
/** Rounds of each program; the best counts, since everything else on the machine only takes away. */
const rounds = 2;

interface Measured {
  readonly program: Program;
  readonly taken: Taken;
  readonly changes: number;
  readonly digest: string;
}

/** `npm run bench -- 1G [SHARE]`: the job done by the command and by others on one input, with the check that all agree. */
export async function bench(size = '200M', share = '0.0002'): Promise<string> {
  const megabytes = megabytesOf(size);
  mkdirSync(folder, { recursive: true });
  const input = join(folder, `poll-${megabytes}-${share}.csv`);
  if (!existsSync(input)) await writeBig(input, String(megabytes), '8', share);
  return table(measure(input), statSync(input).size, share);
}

function megabytesOf(size: string): number {
  const [, number = '', unit = ''] = /^(\d+)([MG])$/.exec(size) ?? [];
  if (number === '') throw new RangeError(`"${size}" is no size: give one such as 200M or 1G.`);
  return Number(number) * (unit === 'G' ? 1000 : 1);
}

/** Runs every program that is there on an input; `states` names its parameters that are states, none where all are. */
export function measure(input: string, states: readonly string[] = []): readonly Measured[] {
  mkdirSync(folder, { recursive: true });
  return programs
    .filter((program) => program.isThere())
    .map((program, place) => {
      const out = join(folder, `changes-${place}.csv`);
      const runs = Array.from({ length: rounds }, () => timed(program.command(input, out, states)));
      const taken = runs.reduce((best, run) => (run.seconds < best.seconds ? run : best));
      const changes = isFloor(program) ? [] : changesOf(program, taken, out);
      const digest = createHash('sha256').update(changes.join('\n')).digest('hex').slice(0, 12);
      return { program, taken, changes: changes.length, digest };
    });
}

function isFloor({ name }: Program): boolean {
  return name.includes('floor');
}

/** True where all programs found the same changes with the same bounds. */
export function agree(measured: readonly Measured[]): boolean {
  return new Set(measured.filter((m) => !isFloor(m.program)).map((m) => m.digest)).size === 1;
}

function table(measured: readonly Measured[], bytes: number, share: string): string {
  const [own] = measured;
  const rows = measured.map(({ program, taken, changes, digest }) =>
    [
      program.name.padEnd(24),
      `${taken.seconds.toFixed(2)} s`.padStart(9),
      `${(bytes / 1e6 / taken.seconds).toFixed(0)} MB/s`.padStart(10),
      (taken.megabytes === null ? 'not measured' : `${taken.megabytes.toFixed(0)} MB`).padStart(10),
      (isFloor(program) ? '' : String(changes)).padStart(9),
      isFloor(program) ? '' : digest,
      own === undefined ? '' : `${(taken.seconds / own.taken.seconds).toFixed(2)} x`.padStart(8),
    ].join('  '),
  );
  return [
    `${(bytes / 1e6).toFixed(0)} MB, changes in ${share} of the rows, ${process.version}, best of ${rounds}`,
    'program                      time        speed      memory    changes  digest        to ours',
    ...rows,
    agree(measured) ? 'All agree on the changes and their bounds.' : 'THEY DO NOT AGREE.',
  ].join('\n');
}
