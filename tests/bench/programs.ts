import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One program that finds the changes of a poll; those of others are a yardstick. */
export interface Program {
  readonly name: string;
  /**
   * The command for an input; it writes its changes to `out`, or to standard output. A poll may hold gauges, which have no
   * changes: `states` names the parameters that are none, and none are named where all are states. The command finds out itself.
   */
  command(input: string, out: string, states: readonly string[]): readonly string[];
  /** Says whether it can run on this machine. */
  isThere(): boolean;
  readonly writesToOutput: boolean;
}

const folder = join('tests', 'bench');
const compiled = join('out', 'bench', 'one-pass');

function can(command: string, ...args: readonly string[]): boolean {
  return spawnSync(command, args, { stdio: 'ignore' }).status === 0;
}

const awk =
  'BEGIN{FS=","; n=split(states,s,","); for(i=1;i<=n;i++) is[s[i]]=1} NR>1 && (n==0 || $3 in is){k=$2","$3; if(k in v && v[k]!=$4) print k","$4","$1","t[k]; v[k]=$4; t[k]=$1}';

/** The command itself first; then the floor, and the same job done by others. */
export const programs: readonly Program[] = [
  {
    name: 'steadypair timeline',
    command: (input, out) => [
      process.execPath,
      join('dist', 'steadypair.mjs'),
      'timeline',
      input,
      '--out',
      out,
    ],
    isThere: () => existsSync(join('dist', 'steadypair.mjs')),
    writesToOutput: false,
  },
  {
    name: 'newline count (floor)',
    command: (input) => ['wc', '-l', input],
    isThere: () => can('wc', '--version'),
    writesToOutput: true,
  },
  {
    name: 'C, one pass',
    command: (input, _out, states) => [compiled, input, ...states],
    isThere: () => can('cc', '-O2', '-o', compiled, join(folder, 'one-pass.c')),
    writesToOutput: true,
  },
  {
    name: 'mawk, one pass',
    command: (input, _out, states) => ['mawk', '-v', `states=${states.join()}`, awk, input],
    isThere: () => can('mawk', 'BEGIN{}'),
    writesToOutput: true,
  },
  {
    name: 'query engine (DuckDB)',
    command: (input, out, states) => [
      process.execPath,
      join(folder, 'query-engine.mjs'),
      input,
      out,
      ...states,
    ],
    isThere: () => true,
    writesToOutput: false,
  },
  {
    name: 'general CSV parser',
    command: (input, out, states) => [
      process.execPath,
      join(folder, 'general-parser.mjs'),
      input,
      out,
      ...states,
    ],
    isThere: () => true,
    writesToOutput: false,
  },
];

/** What a run took: seconds by the wall, the largest resident set in megabytes (`null` where nothing measures it). */
export interface Taken {
  readonly seconds: number;
  readonly megabytes: number | null;
  readonly output: string;
}

const timer = '/usr/bin/time';

/** Runs a program as a process of its own. Throws Error if it ends with a status other than these. */
export function timed(command: readonly string[], statuses: readonly number[] = [0]): Taken {
  const isMeasured = existsSync(timer);
  const [first = '', ...rest] = isMeasured ? [timer, '-f', 'measured %M', ...command] : command;
  const begin = performance.now();
  const run = spawnSync(first, rest, { encoding: 'utf8', maxBuffer: 1 << 30 });
  const seconds = (performance.now() - begin) / 1000;
  if (!statuses.includes(run.status ?? -1)) throw new Error(`${command.join(' ')}: ${run.stderr}`);
  const kilobytes = /measured (\d+)/.exec(run.stderr)?.[1];
  return {
    seconds,
    megabytes: kilobytes === undefined ? null : Number(kilobytes) / 1024,
    output: run.stdout,
  };
}

/** The changes a run found, in one form and order: `pair,parameter,value,time,earliest`. */
export function changesOf({ writesToOutput }: Program, { output }: Taken, out: string): readonly string[] {
  const text = writesToOutput ? output : readFileSync(out, 'utf8');
  const lines = text.trimEnd().split(/\r?\n/);
  const isOurs = lines[0]?.startsWith('time,earliest,pair,half,signal,value,before') === true;
  const rows = isOurs ? lines.slice(1).flatMap(ourChange) : lines.filter((l) => l !== '').map(otherChange);
  return rows.sort();
}

function ourChange(line: string): readonly string[] {
  const [time, earliest, pair, , signal, value, before] = line.split(',');
  return before === '' ? [] : [[pair, signal, value, time, earliest].join()];
}

/** Where a parameter says that it is of the half on standby its signal is what follows. */
function otherChange(line: string): string {
  const [pair, parameter = '', value, time = '', earliest = ''] = line.split(',');
  const signal = parameter.replace(/^standby /, '');
  return [pair, signal, value, instant(time), instant(earliest)].join();
}

function instant(stamp: string): string {
  return new Date(stamp.includes('T') ? stamp : `${stamp.replace(' ', 'T')}Z`).toISOString();
}
