import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/pipeline.ts';
import { analyseTexts, readTexts } from '../../support/read-text.ts';

const bySite = 'units: [{ pattern: "^(?<site>[A-Z][a-z]+)/(?<pair>[A-Z]+[0-9]*)-(?<half>[AB])$" }]';
const line = (unit: string, text: string): string => `2026-03-14T09:00:00Z ${unit} ${text}\n`;

describe('pairs of one name', () => {
  test('at two sites are two pairs', async () => {
    const { timelines } = await analyseTexts(
      {
        'x.log':
          line('Gull/RO1-A', 'role active') +
          line('Marrow/RO1-A', 'role standby') +
          line('Gull/RO2-A', 'role active'),
      },
      { phrasebook: bySite },
    );
    expect(
      timelines.map((t) => [
        t.pair,
        t.site,
        t.events
          .map((e) => (e.concluded ? `(${e.value})` : e.value))
          .sort()
          .reverse(),
      ]),
    ).toEqual([
      // Of the half that no line speaks of the role is concluded.
      ['RO1 at Gull', 'Gull', ['active', '(standby)']],
      ['RO1 at Marrow', 'Marrow', ['standby', '(active)']],
      ['RO2', 'Gull', ['active', '(standby)']],
    ]);
  });

  test('at two sites keep their gauges', async () => {
    const { timelines } = await analyseTexts(
      {
        'x.csv': 'time,unit,load\n2026-03-14T09:00:00Z,Gull/RO1-A,41\n2026-03-14T09:00:00Z,Marrow/RO1-A,43\n',
      },
      { phrasebook: bySite },
    );
    expect(timelines.map((t) => t.gauges.map((g) => g.bins.map((b) => b.mean)))).toEqual([[[41]], [[43]]]);
  });

  test('read with phrasebooks of two sites are two pairs', async () => {
    const one = await readTexts({ 'a.log': line('RO1-A', 'role active') }, { phrasebook: 'name: Gull' });
    const two = await readTexts({ 'b.log': line('RO1-A', 'role active') }, { phrasebook: 'name: Marrow' });
    const none = await readTexts({ 'c.log': line('RO1-A', 'role active') });
    const pairs = (...files: readonly (typeof one)[]): readonly string[] =>
      analyse({ files: files.flatMap((f) => f.files), failures: [] }).timelines.map((t) => t.pair);
    expect(pairs(one, two)).toEqual(['RO1 at Gull', 'RO1 at Marrow']);
    expect(pairs(one, two, none)).toEqual(['RO1', 'RO1 at Gull', 'RO1 at Marrow']);
    // With one site only there is nothing to tell apart.
    expect(pairs(one, none)).toEqual(['RO1']);
  });

  test('of which one source names the site and the other its phrasebook only are one pair', async () => {
    const { timelines } = await analyseTexts(
      { 'x.log': line('Gull/RO1-A', 'role active') + line('RO1-B', 'role standby') },
      { phrasebook: `name: Station 4\n${bySite}` },
    );
    expect(timelines.map((t) => [t.pair, t.site, t.halves])).toEqual([['RO1', 'Gull', ['A', 'B']]]);
  });

  test('has the site that its unit names, else that of its phrasebook, else none', async () => {
    const siteOf = async (text: string, phrasebook?: string): Promise<unknown> =>
      (await analyseTexts({ 'x.log': text }, phrasebook === undefined ? {} : { phrasebook })).timelines.map(
        (t) => t.site,
      );
    expect(await siteOf(line('RO1-A', 'role active'), 'name: Gull')).toEqual(['Gull']);
    expect(await siteOf(line('Marrow/RO1-A', 'role active'), `name: Station 4\n${bySite}`)).toEqual([
      'Marrow',
    ]);
    expect(await siteOf(line('RO1-A', 'role active'))).toEqual([null]);
  });
});

describe('the time zone of a pair', () => {
  const zones = async (
    text: string,
    options: Parameters<typeof analyseTexts>[1],
  ): Promise<readonly (string | null)[]> =>
    (await analyseTexts({ 'x.log': text }, options)).timelines.map((t) => t.zone);
  const bare = line('RO1-A', 'role active').replace('Z ', ' ');

  test('is the one that its stamps were read in', async () => {
    expect(await zones(bare, { zone: 'Europe/Lisbon' })).toEqual(['Europe/Lisbon']);
    expect(await zones(bare, { phrasebook: 'time: { zone: Asia/Tokyo }' })).toEqual(['Asia/Tokyo']);
  });
  test('is the one named beside stamps that say their instant themselves', async () => {
    expect(await zones(line('RO1-A', 'role active'), { zone: 'Europe/Lisbon' })).toEqual(['Europe/Lisbon']);
  });
  test('is not known where nothing names one, and UTC is no place', async () => {
    expect(await zones(bare, {})).toEqual([null]);
    expect(await zones(line('RO1-A', 'role active'), { zone: 'UTC' })).toEqual([null]);
  });
});
