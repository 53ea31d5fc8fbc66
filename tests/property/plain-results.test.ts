/**
 * What leaves the core is plain data. It crosses to another thread, to the page and into JSON, and none of these takes what an object
 * only gives by asking: a step or a line that is still columns must have become an object of its own by then.
 */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  type Analysed,
  analyse,
  attention,
  diagnose,
  fleet,
  healthOfPairs,
  swapsNow,
  verify,
} from '../../src/pipeline.ts';
import { siteFigures } from '../../src/site-figures.ts';
import { sheetFrom } from '../support/prepared.ts';
import { readStored } from '../support/read-text.ts';
import { casesOf } from '../support/relations/run-relations.ts';
import { verifyFiles } from '../support/verify-files.ts';

/** Where in a value something stands that is no plain data; one place for each kind of it. */
function notPlain(value: unknown, path: string, seen: Set<unknown>, found: Map<string, string>): void {
  if (typeof value !== 'object' || value === null || seen.has(value)) return;
  seen.add(value);
  const kind: { readonly name: string } = value.constructor;
  if (!plain.has(kind)) found.set(`${kind.name} ${path.replaceAll(/\d+/g, 'n')}`, path);
  else if (value instanceof Map || value instanceof Set)
    for (const item of value.values()) notPlain(item, `${path}()`, seen, found);
  else for (const [key, item] of Object.entries(value)) notPlain(item, `${path}.${key}`, seen, found);
}

const plain: ReadonlySet<unknown> = new Set([Object, Array, Map, Set]);

/** All answers about some files, by what is asked. */
function answersOf(analysed: Analysed): Readonly<Record<string, unknown>> {
  const pairs = analysed.timelines.map(({ pair }) => pair);
  return {
    verify: verify(analysed, null, { from: null, to: null }, null),
    diagnose: pairs.map((pair) => diagnose(analysed, pair)),
    fleet: fleet(analysed, { by: 'firmware', swaps: 10 }),
    figures: siteFigures(analysed),
    attention: attention(analysed),
    health: healthOfPairs(analysed),
    now: swapsNow(analysed, null, null),
    sheets: pairs.map((pair) => sheetFrom(analysed, { pair, allowOld: true })),
    findings: analysed.findings,
  };
}

/** The kinds of what is not plain in the answers, and where. */
function notPlainIn(analysed: Analysed): readonly string[] {
  const found = new Map<string, string>();
  notPlain(answersOf(analysed), '', new Set(), found);
  return [...found.keys()];
}

test('of the demo site', async () => {
  for (const folder of [
    'marrow-bay/clean-swap',
    'marrow-bay/bad-swap',
    'marrow-bay/wont-sync',
    'marrow-bay-fleet',
  ]) {
    const names = readdirSync(join('samples', folder));
    const phrasebook = names.find((name) => name === 'phrasebook.yaml');
    const logs = names.filter((name) => !/\.(?:ya?ml|md)$/.test(name));
    const files = Object.fromEntries(
      logs.map((name) => [name, new Uint8Array(readFileSync(join('samples', folder, name)))]),
    );
    const text =
      phrasebook === undefined ? undefined : readFileSync(join('samples', folder, phrasebook), 'utf8');
    const read = await readStored(files, text === undefined ? {} : { phrasebook: text });
    expect(notPlainIn(analyse(read))).toEqual([]);
  }
});

test('of swaps in the exports of any site', async () => {
  const found = new Set<string>();
  for (const { dressed } of casesOf(40, 77_000)) {
    const { analysed } = await verifyFiles(dressed.files, dressed.phrasebook);
    for (const one of notPlainIn(analysed)) found.add(one);
  }
  expect([...found]).toEqual([]);
});
