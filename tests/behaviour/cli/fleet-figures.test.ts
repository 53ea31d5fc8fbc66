import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { beforeAll, describe, expect, test } from 'vitest';
import { steadypair } from '../../support/run-command.ts';
import { bySite, journalsOf } from '../../support/site-journals.ts';
import { storeTimeline } from '../../support/store-timeline.ts';

const folder = mkdtempSync(join(tmpdir(), 'figures-'));
const names = ['Gull', 'Marrow', 'Tern'];
/** A timeline of each site. */
let timelines: readonly string[] = [];
/** Their figures, each in a file. */
let figures: readonly string[] = [];

async function figuresAt(name: string, ...args: readonly string[]): Promise<string> {
  const out = join(folder, name);
  const { status, err } = await steadypair('fleet', ...args, '--format', 'parquet', '--out', out);
  expect([status, err]).toEqual([0, '']);
  return out;
}

beforeAll(async () => {
  const phrasebook = join(folder, 'sites.yaml');
  writeFileSync(phrasebook, bySite);
  timelines = await Promise.all(
    names.map((site, place) => {
      const paths = journalsOf(site, place + 1, 2).map((text, index) => {
        const path = join(folder, `${site}-${index}.csv`);
        writeFileSync(path, text);
        return path;
      });
      return storeTimeline(paths, '--phrasebook', phrasebook);
    }),
  );
  figures = await Promise.all(timelines.map((path, index) => figuresAt(`${names[index]}.parquet`, path)));
}, 60_000);

describe('figures in place of timelines', () => {
  test.each<readonly string[]>([
    ['--json'],
    [],
    ['--json', '--group', 'site', '--swaps', '40', '--ready-days', '30'],
  ])(
    'give the same review: %s',
    async (...options) => {
      const whole = await steadypair('fleet', ...timelines, ...options);
      expect(whole.out).toContain('INTAKE');
      expect(await steadypair('fleet', ...figures, ...options)).toEqual(whole);
      const [first = '', second = '', third = ''] = figures;
      expect(await steadypair('fleet', timelines[0] ?? '', second, third, ...options)).toEqual(whole);
      // Figures of figures.
      const region = await figuresAt('region.parquet', first, second);
      const world = await figuresAt('world.parquet', region, timelines[2] ?? '');
      expect(await steadypair('fleet', world, ...options)).toEqual(whole);
    },
    60_000,
  );

  test('give the same reports', async () => {
    const [one, other] = [join(folder, 'one'), join(folder, 'other')];
    await steadypair('fleet', ...timelines, '--out', one);
    await steadypair('fleet', ...figures, '--out', other);
    for (const name of ['fleet.html', 'fleet.md', 'fleet.json', 'fleet-attempts.csv'])
      expect(readFileSync(join(other, name), 'utf8')).toBe(readFileSync(join(one, name), 'utf8'));
  }, 60_000);

  test('count once where they are given twice', async () => {
    const whole = await steadypair('fleet', ...figures, '--json');
    const again = await figuresAt('again.parquet', ...figures.slice(0, 2));
    expect(await steadypair('fleet', ...figures, again, '--json')).toEqual(whole);
    expect(await steadypair('fleet', ...figures, timelines[1] ?? '', '--json')).toMatchObject({
      err: '',
      status: whole.status,
    });
  }, 60_000);

  test('are rows for any engine', async () => {
    const connection = await (await DuckDBInstance.create(':memory:')).connect();
    const reader = await connection.runAndReadAll(`
      select site, pair, sum(losses)::integer as losses, count(*) filter (kind = 'bring-up')::integer as "bringUps"
      from read_parquet([${figures.map((path) => `'${path}'`).join()}]) where pair is not null
      group by all order by all`);
    const { pairs, attempts } = JSON.parse((await steadypair('fleet', ...timelines, '--json')).out);
    const told = pairs.map(
      ({ site, pair, losses }: Record<'site' | 'pair', string> & { losses: number }) => ({
        ...{ site, pair: pair.replace(` at ${site}`, ''), losses },
        bringUps: attempts.filter((a: { readonly pair: string }) => a.pair === pair).length,
      }),
    );
    const keyOf = ({ site, pair }: { readonly site: string; readonly pair: string }): string => site + pair;
    expect(reader.getRowObjects()).toEqual(
      told.sort((a: Parameters<typeof keyOf>[0], b: Parameters<typeof keyOf>[0]) =>
        keyOf(a) < keyOf(b) ? -1 : 1,
      ),
    );
  });
});

describe('figures that cannot be used are one line, and the rest goes on', () => {
  async function refusal(bytes: Uint8Array, ...options: readonly string[]): Promise<readonly string[]> {
    const path = join(folder, 'x.parquet');
    writeFileSync(path, bytes);
    const { err, out } = await steadypair('fleet', path, timelines[1] ?? '', '--json', ...options);
    expect(JSON.parse(out).pairs).toHaveLength(2);
    return err.trimEnd().replaceAll(`${folder}/`, '').split('\n');
  }

  test('damaged', async () => {
    const bytes = readFileSync(figures[0] ?? '');
    bytes[1000] = (bytes[1000] ?? 0) ^ 1;
    expect(await refusal(bytes)).toEqual([
      'x.parquet: this Parquet file is damaged or cut off. Copy it again, or write the timeline again.',
    ]);
    expect(await refusal(readFileSync(figures[0] ?? '').subarray(0, 5000))).toEqual([
      'x.parquet: this Parquet file is damaged or cut off. Copy it again, or write the timeline again.',
    ]);
  });

  test('made by other rules', async () => {
    expect(await refusal(readFileSync(figures[0] ?? ''), '--hold', '30')).toEqual([
      'x.parquet: its figures were made with --hold 60, not 30. Give --hold 60, or make them again.',
    ]);
    expect(await refusal(readFileSync(figures[0] ?? ''), '--align-clocks')).toEqual([
      'x.parquet: its figures were made without --align-clocks. Leave that option out, or make them again.',
    ]);
  });

  test('of a pair that others tell otherwise', async () => {
    const path = join(folder, 'later.csv');
    writeFileSync(path, 'time,unit,message\n2027-01-01T00:00:00Z,Marrow/INTAKE,partner ready\n');
    const phrasebook = join(folder, 'sites.yaml');
    const later = readFileSync(await figuresAt('later.parquet', path, '--phrasebook', phrasebook));
    expect(await refusal(later)).toEqual([
      expect.stringMatching(
        /^x\.parquet: it contains other figures of the pair INTAKE of Marrow than .*site\.parquet, and figures of one pair cannot be combined\. Make them/,
      ),
    ]);
  });

  test('given to another command', async () => {
    expect(await steadypair('verify', figures[0] ?? '')).toMatchObject({
      status: 2,
      err: expect.stringContaining('it contains figures of a fleet, which only steadypair fleet reads.'),
    });
  });

  test('asked for without a file', async () => {
    expect(await steadypair('fleet', timelines[0] ?? '', '--format', 'parquet')).toMatchObject({
      status: 2,
      err: '--format parquet: Parquet is binary and cannot be printed. Name a file with --out.\n',
    });
  });
});
