import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { steadypair } from '../../support/run-command.ts';
import { bySite, journalsOf } from '../../support/site-journals.ts';
import { storeTimeline } from '../../support/store-timeline.ts';

interface FleetDocument {
  readonly inputs: readonly { readonly file: string; readonly container?: unknown }[];
  readonly pairs: readonly { readonly pair: string; readonly site: string }[];
  readonly groups: readonly { readonly group: string }[];
}

async function fleetOf(...args: readonly string[]): Promise<FleetDocument> {
  return JSON.parse((await steadypair('fleet', ...args, '--group', 'site', '--json')).out);
}

test('Parquet timelines of three sites give the same JSON as their raw logs', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'sites-'));
  const phrasebook = join(folder, 'sites.yaml');
  writeFileSync(phrasebook, bySite);
  const sites = ['Gull', 'Marrow', 'Tern'].map((site, place) =>
    journalsOf(site, place + 1, 3).map((text, index) => {
      const path = join(folder, `${site}-${index}.csv`);
      writeFileSync(path, text);
      return path;
    }),
  );
  const raw = await fleetOf(...sites.flat(), '--phrasebook', phrasebook);
  const stored = await Promise.all(sites.map((paths) => storeTimeline(paths, '--phrasebook', phrasebook)));
  const read = await fleetOf(...stored);
  // The one difference there may be: a stored timeline is the container of the logs in it.
  const bare = read.inputs.map(({ container: _container, ...input }) => input);
  expect({ ...read, inputs: bare }).toEqual(raw);
  expect(new Set(read.inputs.map(({ container }) => JSON.stringify(container))).size).toBe(3);
  // Three sites with the same three pairs have nine pairs.
  expect(raw.pairs.map(({ pair }) => pair).sort()).toEqual(
    ['INTAKE', 'PRETREAT', 'RO1'].flatMap((pair) =>
      ['Gull', 'Marrow', 'Tern'].map((site) => `${pair} at ${site}`),
    ),
  );
  expect([...new Set(raw.groups.map(({ group }) => group))]).toEqual(['Gull', 'Marrow', 'Tern']);
}, 30_000);
