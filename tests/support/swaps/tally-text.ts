import { boundedKinds } from './bounds.ts';
import { missKinds } from './judge-swap.ts';
import type { Seeds, Tally } from './tally.ts';

const mostSeeds = 12;

/** A tally as text: verdicts by dressing and by poll spacing, misses with seeds, bounds by kind. */
export function tallyText({ verdicts, misses, bounds }: Tally): string {
  return [
    'Verdicts, in percent of the swaps of each row',
    verdictHead,
    ...[...verdicts].sort(([a], [b]) => compare(a, b)).map(([group, counts]) => verdictRow(group, counts)),
    '',
    ...missKinds.flatMap((kind) => missLines(kind, misses.get(kind) ?? new Map())),
    'True instants and durations inside their bounds',
    ...boundedKinds.flatMap((kind) => boundLines(kind, bounds.get(kind) ?? new Map())),
  ].join('\n');
}

const columns = ['verified', 'inconclusive', 'not-verified', 'none or several'] as const;
const verdictHead = `  ${''.padEnd(21)} ${['good', 'broken'].map((kind) => `${kind.padStart(7)} ${columns.map((c) => c.slice(0, 12).padStart(12)).join(' ')}`).join(' ')}`;

function verdictRow(group: string, counts: ReadonlyMap<string, number>): string {
  const parts = ['good', 'broken'].map((kind) => {
    const numbers = columns.map((column) => counts.get(`${kind} ${column}`) ?? 0);
    const all = numbers.reduce((sum, n) => sum + n, 0);
    const shares = numbers.map((n) => (all === 0 ? '' : ((100 * n) / all).toFixed(1)).padStart(12));
    return `${String(all).padStart(7)} ${shares.join(' ')}`;
  });
  return `  ${group.padEnd(21)} ${parts.join(' ')}`;
}

function missLines(kind: string, seeds: Seeds): readonly string[] {
  const all = [...seeds.values()].flat().length;
  return [`${kind}: ${all}`, ...seedLines(seeds), ''];
}

function seedLines(seeds: Seeds): readonly string[] {
  return [...seeds]
    .sort(([, a], [, b]) => b.length - a.length)
    .map(([about, list]) => {
      const shown = list.slice(0, mostSeeds).join(' ');
      return `  ${String(list.length).padStart(5)}  ${about}: ${shown}${list.length > mostSeeds ? ' ...' : ''}`;
    });
}

function boundLines(kind: string, seeds: Seeds): readonly string[] {
  const inside = seeds.get('inside')?.length ?? 0;
  const others = new Map([...seeds].filter(([about]) => about !== 'inside'));
  const outside = [...others]
    .filter(([about]) => about.startsWith('outside'))
    .flatMap(([, list]) => list).length;
  const judged = inside + outside;
  const share = judged === 0 ? 'none' : `${((100 * inside) / judged).toFixed(2)} %`;
  return [`  ${kind}: ${share} of ${judged}`, ...seedLines(others).map((line) => `  ${line}`)];
}

function compare(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
