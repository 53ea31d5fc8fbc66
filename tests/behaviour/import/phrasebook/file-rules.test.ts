import { describe, expect, test } from 'vitest';
import { allChanges, changeAt } from '../../../../src/changes.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';
import { readText } from '../../../support/read-text.ts';

const rule = (more: string): string => `files: [{ match: "*", ${more} }]\n`;

describe('a rule for files that is wrong', () => {
  test.each([
    ['unit: INFO', 'files[0].unit is "INFO", which names no pair. Write it like RO1-A, or'],
    ['unit: "the left one"', 'files[0].unit is "the left one", which names no pair.'],
    ['path: "("', 'files[0].path is not a valid pattern: '],
    ['record: "["', 'files[0].record is not a valid pattern: '],
    ['header: "(?=x)(?<parameter>.)"', 'files[0].header is not a valid pattern: '],
    ['path: "(?<half>[AB])/"', 'files[0].path has no group (?<pair>...) or (?<unit>...).'],
    [
      'path: "(?<pair>.)/(?<slot>.)/"',
      'files[0].path has a group (?<slot>...), which is not used for a path.',
    ],
    ['header: "^(?<unit>.*)$"', 'files[0].header has no group (?<parameter>...).'],
    ['line: "^(?<unit>.) (?<message>.*)$"', 'files[0].line has no group (?<time>...) or (?<date>...).'],
    ['line: "^(?<clock>.) (?<message>.*)$"', 'files[0].line has no group (?<time>...) or (?<date>...).'],
    ['line: "^(?<time>.) (?<value>.*)$"', 'files[0].line has a group value without a group parameter.'],
    ['line: "^(?<time>.) (?<parameter>.*)$"', 'files[0].line has a group parameter without a group value.'],
    ['time: { since: yesterday }', 'files[0].time.since is "yesterday", which is not an instant.'],
    // A clock of which no zone is known is no instant.
    [
      'time: { since: "2026-03-14T08:00:00" }',
      'files[0].time.since is "2026-03-14T08:00:00", which is not an instant.',
    ],
    [
      'time: { since: "2026-03-14T08:00:00Z", epoch: us }',
      'files[0].time has since and epoch: only one of them can apply. Keep one of them.',
    ],
    ['time: { format: "dd/MM/yyyy", epoch: us }', 'files[0].time has format and epoch: '],
    ['time: { format: "QQ" }', 'files[0].time.format: "QQ" is no field'],
    ['time: { epoch: minutes }', 'files[0].time.epoch is "minutes"'],
    ['columns: { time: 3 }', 'files[0].columns.time is 3'],
  ])('%s: one line says where and what', (more, message) => {
    const read = (): unknown => readPhrasebook('site.yaml', rule(more));
    expect(read).toThrow(`site.yaml: ${message}`);
    expect(read).not.toThrow(/\n/);
  });

  test('epoch and since are for files, not for a site', () => {
    expect(() => readPhrasebook('site.yaml', 'time: { epoch: us }\n')).toThrow(
      'time.epoch is not a key here',
    );
  });
});

describe('the stamps of one file', () => {
  const at = async (text: string, phrasebook: string, options = {}): Promise<string | undefined> => {
    const read = await readText('events.log', text, { phrasebook, ...options });
    const time = changeAt(read.changes, 0)?.time;
    return time === undefined ? undefined : new Date(time).toISOString();
  };

  test.each([
    // Lisbon is at UTC in winter, Kolkata 5 h 30 min ahead of it.
    ['14/03/2026 10:00:00', 'zone: Asia/Kolkata', '2026-03-14T04:30:00.000Z'],
    ['03/04/2026 10:00:00', 'order: month-first', '2026-03-04T10:00:00.000Z'],
    ['Mar 14 10:00:00', 'year: 2025', '2025-03-14T10:00:00.000Z'],
    ['20260314-100000', 'format: "yyyyMMdd-HHmmss"', '2026-03-14T10:00:00.000Z'],
    ['[ 7200.250000]', 'since: "2026-03-14T08:00:00Z"', '2026-03-14T10:00:00.250Z'],
    ['1773482400000000', 'epoch: us', '2026-03-14T10:00:00.000Z'],
  ])('%s by %s', async (stamp, time, expected) => {
    const site = 'time: { zone: Europe/Lisbon, order: day-first, year: 2026 }\n';
    expect(await at(`${stamp} RO1-A light steady\n`, site + rule(`time: { ${time} }`))).toBe(expected);
  });

  test('that another file has are read as the site writes them', async () => {
    const phrasebook =
      'time: { zone: Asia/Kolkata }\nfiles: [{ match: "boot-*", time: { since: "2026-03-14T08:00:00Z" } }]\n';
    expect(await at('2026-03-14 10:00:00 RO1-A light steady\n', phrasebook)).toBe('2026-03-14T04:30:00.000Z');
  });

  test('are read as the user says, who comes first', async () => {
    const phrasebook = rule('time: { zone: Asia/Kolkata }');
    expect(await at('2026-03-14 10:00:00 RO1-A light steady\n', phrasebook, { zone: 'UTC' })).toBe(
      '2026-03-14T10:00:00.000Z',
    );
  });

  test('that count whole seconds are no finer than that', async () => {
    const read = async (stamp: string): Promise<number> =>
      (
        await readText('a.log', `${stamp} RO1-A light steady\n`, {
          phrasebook: rule('time: { since: "2026-03-14T08:00:00Z" }'),
        })
      ).resolution;
    expect([await read('[12]'), await read('[12.5]')]).toEqual([1000, 0]);
  });

  test('are in the table of both lanes', async () => {
    const rows = Array.from({ length: 50 }, (_, i) => `${1_773_478_800 + i * 10}000000,RO1-A,light,steady`);
    const text = `time,unit,parameter,value\n${rows.join('\n')}\n1773479400000000,RO1-A,light,off\n`;
    const phrasebook = rule('time: { epoch: us }');
    const fast = await readText('poll.csv', text, { phrasebook });
    expect(allChanges(fast.changes).map((c) => [new Date(c.time).toISOString(), c.value])).toEqual([
      ['2026-03-14T09:00:00.000Z', 'steady'],
      ['2026-03-14T09:10:00.000Z', 'off'],
    ]);
    expect(await readText('poll.csv', text, { phrasebook, isGeneralOnly: true })).toEqual(fast);
  });
});
