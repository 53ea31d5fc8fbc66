import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeBig } from '../../samples/big.ts';
import { fleetFrom, type PairPlan, tellFleet } from '../../samples/fleet.ts';
import { journalOf } from '../../samples/fleet-files.ts';
import { type Taken, timed } from './programs.ts';

const folder = join('out', 'bench');
const command = [process.execPath, join('dist', 'steadypair.mjs')] as const;
const perSite = 100;
const dayMs = 86_400_000;

/** `npm run bench:growth [-- all]`: time and memory against the number of pairs and the size of a poll; `all` up to 4 GB. */
export async function growth(reach = 'some'): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const sizes = reach === 'all' ? [200, 1000, 4000] : [50, 200];
  const lines: string[] = [];
  for (const size of sizes) lines.push(await pollOf(size, 8));
  for (const pairs of [10, 100, 1000, 10_000]) lines.push(await pollOf(50, pairs));
  for (const years of [1, 2]) lines.push(...fleetOf(1000, years));
  return lines.join('\n');
}

async function pollOf(megabytes: number, pairs: number): Promise<string> {
  const input = join(folder, `poll-${megabytes}-${pairs}-pairs.csv`);
  if (!existsSync(input)) await writeBig(input, String(megabytes), String(pairs), '0.0002');
  const { seconds, megabytes: memory } = timed([
    ...command,
    'timeline',
    input,
    '--out',
    join(folder, 'events.csv'),
  ]);
  return line(`timeline, a poll of ${megabytes} MB, ${pairs} pairs`, seconds, memory, statSync(input).size);
}

/** How a fleet was stored: its files, and what storing its first site took, with the bytes of its journals; `null` if it was there. */
interface StoredFleet {
  readonly stored: readonly string[];
  readonly first: (Taken & { readonly bytes: number }) | null;
}

/** A fleet as stored timelines, a file per hundred pairs; its journals are told as those of the demo fleet are. */
export function storedFleet(count: number, years: number): StoredFleet {
  mkdirSync(folder, { recursive: true });
  const stored: string[] = [];
  let first: StoredFleet['first'] = null;
  for (let site = 0; site * perSite < count; site += 1) {
    const out = join(folder, `site-${site}-${years}.parquet`);
    stored.push(out);
    if (existsSync(out)) continue;
    const logs = writeSite(site, years);
    const bytes = logs.reduce((sum, log) => sum + statSync(log).size, 0);
    const taken = timed([...command, 'timeline', ...logs, '--format', 'parquet', '--out', out]);
    if (site === 0) first = { ...taken, bytes };
  }
  return { stored, first };
}

function fleetOf(count: number, years: number): readonly string[] {
  const { stored, first } = storedFleet(count, years);
  const size = stored.reduce((sum, file) => sum + statSync(file).size, 0);
  const { seconds, megabytes } = timed([...command, 'fleet', ...stored, '--json'], [0, 1]);
  return [
    ...(first === null
      ? []
      : [
          line(
            `timeline to Parquet, ${perSite} pairs, journals, years: ${years}`,
            first.seconds,
            first.megabytes,
            first.bytes,
          ),
        ]),
    line(`fleet, ${count} pairs as timelines, years: ${years}`, seconds, megabytes, size),
  ];
}

function writeSite(site: number, years: number): readonly string[] {
  const plans = Array.from({ length: perSite }, (_, index): PairPlan => {
    const pair = `P${site * perSite + index}`;
    return { pair, lossesPerYear: 2, growth: 1, reflashedAt: Date.UTC(2025, 7, 5, 9), swappedAt: null };
  });
  const into = join(folder, `site-${site}-${years}`);
  const end = new Date(fleetFrom + years * 365 * dayMs).toISOString();
  mkdirSync(into, { recursive: true });
  return tellFleet(plans, site + 1).map((told) => {
    const path = join(into, `${told.plan.pair}.csv`);
    // The header begins with a letter, the rows with their stamp.
    const rows = journalOf(told).split('\n');
    writeFileSync(path, rows.filter((row) => row < end || row.startsWith('time')).join('\n'));
    return path;
  });
}

function line(what: string, seconds: number, megabytes: number | null, bytes: number): string {
  const memory = megabytes === null ? 'not measured' : `${megabytes.toFixed(0)} MB`;
  const speed = `${(bytes / 1e6 / seconds).toFixed(0)} MB/s`;
  return `${what.padEnd(48)} ${seconds.toFixed(2).padStart(8)} s ${memory.padStart(9)} ${speed.padStart(10)}`;
}
