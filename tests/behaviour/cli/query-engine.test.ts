import { copyFileSync, mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { expect, test } from 'vitest';
import { fileWith } from '../../support/run-command.ts';
import { storeTimeline } from '../../support/store-timeline.ts';

/** Losses of one pair in one month, one second each, as a site would keep them. */
const months = [
  { site: 'north', month: '2026-03', pair: 'RO1', days: [3, 9, 20] },
  { site: 'north', month: '2026-04', pair: 'RO1', days: [2] },
  { site: 'south', month: '2026-03', pair: 'RO3', days: [5, 6] },
];

async function storeAll(): Promise<string> {
  const root = mkdtempSync(join(tmpdir(), 'sites-'));
  for (const { site, month, pair, days } of months) {
    const lines = days.flatMap((day) => {
      const date = `${month}-${String(day).padStart(2, '0')}`;
      return [
        `${date}T10:00:00.250Z ${pair} partner not ready`,
        `${date}T10:00:01.250Z ${pair} partner ready`,
      ];
    });
    const folder = join(root, `site=${site}`, `month=${month}`);
    mkdirSync(folder, { recursive: true });
    const stored = await storeTimeline([fileWith(`${lines.join('\n')}\n`, 'events.log')]);
    copyFileSync(stored, join(folder, 'timeline.parquet'));
  }
  return root;
}

test('one query reads the timelines of all sites and months', async () => {
  const root = await storeAll();
  const connection = await (await DuckDBInstance.create(':memory:')).connect();
  const reader = await connection.runAndReadAll(`
    select site, month, pair, count(*)::integer as losses, epoch_ms(min(time))::double as first
    from read_parquet('${root}/site=*/month=*/*.parquet', hive_partitioning = true, hive_types_autocast = false)
    where signal = 'partner-ready' and value = 'no'
    group by all order by all`);
  expect(reader.getRowObjects()).toEqual([
    { site: 'north', month: '2026-03', pair: 'RO1', losses: 3, first: Date.UTC(2026, 2, 3, 10, 0, 0, 250) },
    { site: 'north', month: '2026-04', pair: 'RO1', losses: 1, first: Date.UTC(2026, 3, 2, 10, 0, 0, 250) },
    { site: 'south', month: '2026-03', pair: 'RO3', losses: 2, first: Date.UTC(2026, 2, 5, 10, 0, 0, 250) },
  ]);
});
