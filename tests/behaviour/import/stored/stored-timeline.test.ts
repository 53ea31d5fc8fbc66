import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parquetWriteBuffer } from 'hyparquet-writer';
import { describe, expect, test } from 'vitest';
import { changesFrom } from '../../../../src/change-columns.ts';
import { allChanges } from '../../../../src/changes.ts';
import { digestOf } from '../../../../src/cli/platform.ts';
import { timelineParquet } from '../../../../src/report/timeline-parquet.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { analyseTexts, readTexts } from '../../../support/read-text.ts';

/** A poll with a gauge, a gap, a value that ends, and a wording that is not known; a journal; a note. */
const logs = {
  'poll.csv': [
    'time,unit,parameter,value',
    ...[0, 10, 20, 30, 90, 100].flatMap((second) => [
      `${at(second)},NORTH/RO1-A,load,${40 + second / 7}`,
      `${at(second)},NORTH/RO1-A,serial,${second < 30 ? 'T2-1' : ''}`,
      `${at(second)},NORTH/RO1,partner-ready,${second < 90 ? 'yes' : 'no'}`,
      `${at(second)},NORTH/RO1-B,light,${second === 20 ? 'green' : 'steady'}`,
    ]),
  ].join('\n'),
  'journal.csv': `time,unit,message\n${at(31)},NORTH/RO1-A,module removed\n${at(32)},NORTH/RO1,standby firmware 6.2.0\n`,
  'notes.txt': 'Pair RO1\n14 Mar 2026\n10:01 pulled standby from slot A\n',
};
const phrasebook = `name: Marrow Bay
units:
  - pattern: "^(?<site>[A-Z]+)/(?<pair>[A-Z]+[0-9]*)-(?<half>[AB])$"
  - pattern: "^(?<site>[A-Z]+)/(?<pair>[A-Z]+[0-9]*)$"
parameters:
  standby firmware: { signal: firmware, subject: standby }
`;

function at(second: number): string {
  return `2026-03-14 10:${second < 60 ? '00' : '01'}:${String(second % 60).padStart(2, '0')}Z`;
}

function withoutContainer(file: ImportedFile): ImportedFile {
  const { container: _container, ...input } = file.input;
  return { ...file, input };
}

describe('a stored timeline', () => {
  test('gives the files back that it was made from, whole', async () => {
    const { files } = await readTexts(logs, { phrasebook });
    const stored = await readTexts({ 'site.parquet': timelineParquet(files, [], digestOf) });
    expect(stored.failures).toEqual([]);
    expect(stored.files.map(withoutContainer)).toEqual(files);
    const [poll, journal] = files;
    expect(poll?.gauges[0]?.bins).toHaveLength(1);
    expect(poll?.streams.flatMap((s) => s.gaps).length).toBeGreaterThan(0);
    expect(poll?.unknown).toHaveLength(1);
    expect(journal?.streams[0]?.subject.site).toBe('NORTH');
  });
  test('keeps until when its signals were read, what is read again, what was not understood, and its extent', async () => {
    const light = [0, 10, 20, 30, 80, 90];
    const poll = [
      `${at(0)},(hall),light,steady`,
      ...Array.from({ length: 10 }, (_, place) => place * 10).flatMap((second) => [
        `${at(second)},RO1-A,supply,good`,
        ...(light.includes(second) ? [`${at(second)},RO1-A,light,steady`] : []),
      ]),
      `${at(100)},RO1-A,hue,red`,
    ];
    const { files } = await readTexts({ 'poll.csv': ['time,unit,parameter,value', ...poll, ''].join('\n') });
    const stored = await readTexts({ 'site.parquet': timelineParquet(files, [], digestOf) });
    const begin = Date.UTC(2026, 2, 14, 10);
    const [file] = stored.files.map(withoutContainer);
    expect(file).toEqual(files[0]);
    expect([file?.input.from, file?.input.to]).toEqual([begin, begin + 100_000]);
    expect(file?.streams.map(({ reads }) => reads.map(({ to }) => (to - begin) / 1000))).toEqual([
      [],
      [90, 90],
    ]);
    expect(file?.streams.map(({ notUnderstood }) => notUnderstood)).toEqual([
      [{ from: begin, count: 1 }],
      [{ from: begin + 60_000, count: 1 }],
    ]);
    // Silent from 30 to 80 s.
    const changes = allChanges(file?.changes ?? changesFrom([]));
    expect(changes.filter(({ before, value }) => before === value)).toMatchObject([
      { signal: 'light', earliest: begin + 30_000, time: begin + 80_000 },
    ]);
  });
  test('of before these were kept is read without them', async () => {
    const bytes = readFileSync(join('tests', 'fixtures', 'stored', 'before-reads.parquet'));
    const { files, failures } = await readTexts({ 'old.parquet': bytes });
    expect(failures).toEqual([]);
    expect(
      files.map((file) => allChanges(file.changes).map(({ signal, value }) => `${signal} ${value}`)),
    ).toEqual([['light steady', 'partner-ready yes', 'partner-ready no']]);
    expect(files[0]?.streams.map(({ reads, notUnderstood }) => [reads, notUnderstood])).toEqual([
      [[], []],
      [[], []],
    ]);
  });
  test('in any chunks', async () => {
    const { files } = await readTexts(logs, { phrasebook });
    const stored = await readTexts({ 'site.parquet': timelineParquet(files, [], digestOf) }, { chunk: 3 });
    expect(stored.files.map(withoutContainer)).toEqual(files);
  });
  test('a file given twice counts once, in the logs and in a timeline', async () => {
    const once = await readTexts(logs, { phrasebook });
    const bytes = timelineParquet([...once.files, ...once.files], [], digestOf);
    expect((await readTexts({ 'a.parquet': bytes, 'b.parquet': bytes })).files.map(withoutContainer)).toEqual(
      once.files,
    );
  });
  test('logs of one name from two sites stay two, each named after its timeline', async () => {
    const said = (pair: string): Readonly<Record<string, string>> => ({
      'events.log': `2026-03-14T10:00:00.000Z ${pair} partner not ready\n`,
    });
    const [north, south] = [await readTexts(said('RO1')), await readTexts(said('RO2'))];
    const { timelines } = await analyseTexts({
      'north.parquet': timelineParquet(north.files, [], digestOf),
      'south.parquet': timelineParquet(south.files, [], digestOf),
    });
    expect(timelines.map((t) => [t.pair, t.events[0]?.sources[0].file])).toEqual([
      ['RO1', 'north.parquet/events.log'],
      ['RO2', 'south.parquet/events.log'],
    ]);
  });
});

describe('what could not be read when a timeline was written', () => {
  const open = { 'open.csv': 'time,unit,message\n03/04/2026 10:00,RO1-A,light steady\n', ...logs };
  test('is told with the kind it was of', async () => {
    const { files, failures } = await readTexts(open, { phrasebook });
    expect(failures.map((f) => f.kind)).toEqual(['date-order']);
    const bytes = timelineParquet(files, failures, digestOf);
    const { findings } = await analyseTexts({ 'site.parquet': bytes });
    expect(findings.filter((f) => f.pair === null).map((f) => f.id)).toContain('date-order');
    expect((await readTexts({ 'site.parquet': bytes })).failures).toEqual(failures);
  });
  test('was of no kind in timelines written before kinds were kept: it is unreadable', async () => {
    const { files, failures } = await readTexts(open, { phrasebook });
    const plain = failures.map(({ where, what, fix }) => ({ where, what, fix, kind: 'unreadable' as const }));
    const bytes = timelineParquet(files, plain, digestOf);
    expect(new TextDecoder('windows-1252').decode(bytes)).not.toContain('"kind":"unreadable"');
    const stored = await readTexts({ 'site.parquet': bytes });
    expect(stored.failures.map((f) => f.kind)).toEqual(['unreadable']);
  });
});

describe('a Parquet file that is none', () => {
  const columnData = [{ name: 'x', data: [1, 2], type: 'INT32' as const }];
  const stored = (value: string): Uint8Array =>
    new Uint8Array(parquetWriteBuffer({ columnData, kvMetadata: [{ key: 'steadypair', value }] }));
  const files = JSON.stringify({ schema: 'steadypair/stored-timeline/1', files: [], failures: [] });
  test.each([
    [
      'of another program',
      new Uint8Array(parquetWriteBuffer({ columnData })),
      'is not a timeline written by this program',
    ],
    ['without a checksum', stored(files), 'is not a timeline written by this program'],
  ])('%s: one line', async (_name, bytes, what) => {
    const { failures } = await readTexts({ 'x.parquet': bytes });
    expect(failures.map((f) => f.message)).toEqual([expect.stringContaining(what)]);
  });
  test('a row that names a file or stream that is not there', async () => {
    const { files: read } = await readTexts(logs, { phrasebook });
    const torn = read.map((file) => ({ ...file, streams: [] }));
    const { failures } = await readTexts({ 'x.parquet': timelineParquet(torn, [], digestOf) });
    expect(failures.map((f) => f.where)).toEqual(['x.parquet']);
  });
});
