import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { writeManySites } from '../../samples/at-scale/many-sites.ts';
import type { Bench } from './bench-case.ts';
import { timed } from './programs.ts';

const folder = join('out', 'bench');
const command = [process.execPath, join('dist', 'steadypair.mjs')] as const;
const pairs = 100;

/** What one run over a fleet took: seconds by the wall, the largest resident set in megabytes, and megabytes of what it read. */
export interface FleetRun {
  readonly what: string;
  readonly seconds: number;
  readonly megabytes: number | null;
  readonly read: number;
}

/**
 * `npm run bench:fleet -- 1000`: the review of so many sites of a hundred pairs over a year: from a timeline for each site and month,
 * the same as figures, and from those.
 */
export async function benchFleet(sites = '1000'): Promise<string> {
  return (await fleetRuns(Number(sites))).map(line).join('\n');
}

/** The runs of that measure. */
export async function fleetRuns(sites: number): Promise<readonly FleetRun[]> {
  const timelines = join(folder, `sites-${sites}`);
  const figures = join(folder, `sites-${sites}.figures.parquet`);
  if (!existsSync(timelines)) await writeManySites(timelines, sites, pairs);
  const all = readdirSync(timelines).reduce((sum, name) => sum + statSync(join(timelines, name)).size, 0);
  const review = timed([...command, 'fleet', timelines], [0, 1, 3]);
  const write = timed([...command, 'fleet', timelines, '--format', 'parquet', '--out', figures]);
  const again = timed([...command, 'fleet', figures], [0, 1, 3]);
  if (again.output !== review.output)
    throw new Error('The review of the figures is not that of the timelines.');
  const of = `${sites} sites of ${pairs} pairs, a year`;
  return [
    { what: `fleet, ${of}, from timelines`, read: all, ...review },
    { what: `figures of ${of}`, read: all, ...write },
    { what: `fleet, ${of}, from figures`, read: statSync(figures).size, ...again },
  ];
}

function line({ what, seconds, megabytes, read }: FleetRun): string {
  const memory = megabytes === null ? 'not measured' : `${megabytes.toFixed(0)} MB`;
  return `${what.padEnd(60)} ${seconds.toFixed(1).padStart(8)} s ${memory.padStart(9)}, read ${(read / 1e6).toFixed(1)} MB`;
}

/** The review of a site of a hundred pairs for every 25 megabytes asked for; it checks that figures give the same. */
export const fleetBench: Bench = {
  id: 'fleet',
  measure: async (megabytes) => {
    const sites = Math.max(2, Math.round(megabytes / 25));
    const runs = await fleetRuns(sites);
    const rows = runs.map(({ what, seconds, megabytes: memory }) => ({
      job: what,
      program: 'steadypair fleet',
      seconds,
      megabytes: memory,
      amount: { count: sites * pairs, unit: 'pairs' } as const,
      yardstick: null,
    }));
    return { rows, notes: [], agrees: null };
  },
};
