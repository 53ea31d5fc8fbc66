import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { rounds } from './alternate.ts';
import { type Found, folder } from './bench-case.ts';
import { tableOf, withTable } from './bench-table.ts';
import { benches } from './benches.ts';

const readme = 'README.md';

/**
 * `npm run bench -- 1G [polls page ...] [--readme]`: the table of all benches, or of those named, over inputs of that size;
 * `--readme` also writes it into the README. Exit status 1 where programs that do one job disagree.
 */
export async function bench(size = '200M', ...more: readonly string[]): Promise<string> {
  const megabytes = megabytesOf(size);
  const names = more.filter((name) => name !== '--readme');
  const unknown = names.find((name) => !benches.some(({ id }) => id === name));
  if (unknown !== undefined)
    throw new RangeError(`There is no bench "${unknown}": name ${benches.map(({ id }) => id).join(', ')}.`);
  mkdirSync(folder, { recursive: true });
  const found: Found[] = [];
  for (const { id, measure } of benches)
    if (names.length === 0 || names.includes(id)) found.push(await measure(megabytes));
  const table = tableOf(found, machineWith(size));
  if (more.includes('--readme')) writeFileSync(readme, withTable(readFileSync(readme, 'utf8'), table));
  if (found.some(({ agrees }) => agrees === false)) process.exitCode = 1;
  return table;
}

function megabytesOf(size: string): number {
  const [, number = '', unit = ''] = /^(\d+)([MG])$/.exec(size) ?? [];
  if (number === '') throw new RangeError(`"${size}" is no size: give one such as 200M or 1G.`);
  return Number(number) * (unit === 'G' ? 1000 : 1);
}

/** When and on what was measured. */
function machineWith(size: string): string {
  const [cpu] = cpus();
  const date = new Date().toISOString().slice(0, 10);
  return `${date}, ${cpu?.model.trim() ?? 'unknown CPU'}, ${cpus().length} cores, Node ${process.versions.node}, inputs of ${size}, best of ${rounds} in turn.`;
}
