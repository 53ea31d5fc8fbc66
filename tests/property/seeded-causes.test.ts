import { describe, expect, test } from 'vitest';
import { causes } from '../../src/diagnose/causes.ts';
import { diagnose } from '../../src/pipeline.ts';
import { analyseTexts } from '../support/read-text.ts';
import { seededTroubles } from '../support/seeded-troubles.ts';

const ids = causes.map((c) => c.meta.id);
const seeds = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** How often each cause came first, for the injected one. */
async function firsts(injected: string): Promise<ReadonlyMap<string, number>> {
  const counts = new Map<string, number>();
  for (const seed of seeds) {
    const files = seededTroubles[injected]?.(seed) ?? {};
    const first = diagnose(await analyseTexts(files), 'PRETREAT').causes[0]?.id ?? 'none';
    counts.set(first, (counts.get(first) ?? 0) + 1);
  }
  return counts;
}

/** Rows: what was injected; columns, by number: what came first. */
function confusion(table: ReadonlyMap<string, ReadonlyMap<string, number>>): string {
  const number = (n: number | undefined): string => (n === undefined ? '.' : String(n)).padStart(3);
  const head = `${' '.repeat(26)}${ids.map((_, index) => number(index + 1)).join('')}`;
  const rows = [...table].map(
    ([id, counts]) =>
      `${number(ids.indexOf(id) + 1)} ${id.padEnd(22)}${ids.map((other) => number(counts.get(other))).join('')}`,
  );
  return ['injected, and what came first in ten seeded stories', head, ...rows].join('\n');
}

describe('ten seeded stories of each cause', () => {
  test('the injected cause comes first in at least nine of ten', async () => {
    const table = new Map<string, ReadonlyMap<string, number>>();
    for (const id of ids) table.set(id, await firsts(id));
    console.log(confusion(table));
    for (const [id, counts] of table) expect([id, (counts.get(id) ?? 0) >= 9]).toEqual([id, true]);
  }, 240_000);
});
