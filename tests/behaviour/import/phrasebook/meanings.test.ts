/** What a phrasebook says of messages: several things at once, of which half, in which rows, and where a condition ends. */

import { describe, expect, test } from 'vitest';
import { allChanges, changeAt } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText, readTexts } from '../../../support/read-text.ts';

function told({ changes }: ImportedFile): readonly string[] {
  return allChanges(changes).map(({ subject: { pair, half, role }, signal, value, line }) =>
    [pair, half ?? role ?? 'pair', signal, value ?? '-', line].join(' '),
  );
}

const journal = (...rows: readonly string[]): string =>
  `time,unit,message\n${rows.map((row, i) => `2026-03-14T09:0${i}:00Z,${row}\n`).join('')}`;

const lost = [
  'messages:',
  '  - when: lost my partner',
  '    of: other',
  '    means: [{ signal: partner-ready, value: no }, { signal: role, value: none }]',
  '',
].join('\n');

describe('means', () => {
  test('says several things of one line, which counts once; the same line again within a second counts for all of them', async () => {
    const phrasebook =
      'messages: [{ when: took over, means: [{ signal: role, value: active }, { signal: note, value: took over }] }]\n';
    const twice =
      'time,unit,message\n2026-03-14T09:00:00Z,RO1-A,took over\n2026-03-14T09:00:00Z,RO1-A,took over\n';
    const read = await readText('x.csv', twice, { phrasebook });
    expect(told(read)).toEqual(['RO1 A role active 2', 'RO1 A note took over 2']);
    expect(allChanges(read.changes).map((c) => c.count)).toEqual([2, 2]);
    expect(read.input.rows).toMatchObject({ read: 2, used: 1, unchanged: 1 });
  });

  test('is all or nothing: a line of which one part is not known is not understood', async () => {
    const phrasebook =
      'messages: [{ when: "took (?<value>.*)", means: [{ signal: note }, { signal: link-a }] }]\n';
    const read = await readText('x.csv', journal('RO1-A,took over'), { phrasebook });
    expect([told(read), read.input.rows.unmatched]).toEqual([[], 1]);
  });
});

describe('of', () => {
  test('other is the half that the files name beside the one that speaks, in any file', async () => {
    const { files } = await readTexts(
      { 'x.csv': journal('RO1/left,lost my partner'), 'y.csv': journal('RO1/right,light steady') },
      { phrasebook: `units: [{ pattern: "^(?<pair>RO1)/(?<half>.*)$" }]\n${lost}` },
    );
    expect(files.map(told)).toEqual([
      ['RO1 pair partner-ready no 2', 'RO1 right role none 2'],
      ['RO1 right light steady 2'],
    ]);
  });

  test.each([
    ['RO1-A', 'B'],
    ['RO1-B', 'A'],
    ['RO1-2', '1'],
    ['RO1-7', '1'],
  ])('other of %s alone is %s', async (unit, half) => {
    const { files } = await readTexts({ 'x.csv': journal(`${unit},lost my partner`) }, { phrasebook: lost });
    expect(files.map((f) => changeAt(f.changes, 1)?.subject)).toEqual([{ pair: 'RO1', half, role: null }]);
  });

  test('other of a role is the other role', async () => {
    const { files } = await readTexts(
      { 'x.csv': journal('RO1-standby,partner halted') },
      {
        phrasebook: 'messages: [{ when: partner halted, of: other, signal: restart }]\n',
      },
    );
    expect(files.map(told)).toEqual([['RO1 active restart - 2']]);
  });

  test('other of a unit that names no half is not guessed, and a notice says so', async () => {
    const read = await readText('x.csv', journal('RO1,lost my partner'), { phrasebook: lost });
    expect([told(read), read.input.rows.unmatched]).toEqual([[], 1]);
    expect(read.notices.map((n) => n.what)).toContain(
      'messages[0] is about the other half, but the unit names no half: one row was not recognised.',
    );
  });

  test('self passes over the half that the words name, pair over that of the unit', async () => {
    const rule = (of: string): string =>
      `messages: [{ when: "slot B restarted", of: ${of}, signal: restart }]\n`;
    const of = async (unit: string, yaml: string): Promise<readonly string[]> =>
      told(await readText('x.csv', journal(`${unit},slot B restarted`), { phrasebook: yaml }));
    expect(await of('RO1', rule('self'))).toEqual(['RO1 pair restart - 2']);
    expect(await of('RO1', 'messages: [{ when: "slot B restarted", signal: restart }]\n')).toEqual([
      'RO1 B restart - 2',
    ]);
    expect(await of('RO1-A', rule('pair'))).toEqual(['RO1 pair restart - 2']);
  });

  test('is said once for all of means, or by each for itself', async () => {
    const phrasebook = [
      'messages:',
      '  - when: handed over',
      '    of: other',
      '    means: [{ signal: role, value: active }, { of: self, signal: role, value: standby }]',
      '',
    ].join('\n');
    const { files } = await readTexts({ 'x.csv': journal('RO1-A,handed over') }, { phrasebook });
    expect(files.map(told)).toEqual([['RO1 B role active 2', 'RO1 A role standby 2']]);
  });
});

describe('only', () => {
  const phrasebook = [
    'messages:',
    '  - { when: seven, only: { file: "node-a/*", unit: "-A$" }, signal: light, value: steady }',
    '  - { when: seven, only: { unit: "-A$" }, signal: light, value: flashing }',
    '  - { when: seven, only: { file: "*.csv" }, signal: light, value: "off" }',
    '',
  ].join('\n');
  test.each([
    ['/logs/node-a/x.csv', 'RO1-A', 'steady'],
    ['node-a\\x.csv', 'RO1-A', 'steady'],
    ['node-b/x.csv', 'RO1-A', 'flashing'],
    ['node-a/x.csv', 'RO1-B', 'off'],
    ['x.log.csv', 'RO1-B', 'off'],
  ])('passes a rule over for other rows: %s %s %s', async (file, unit, value) => {
    expect(told(await readText(file, journal(`${unit},seven`), { phrasebook }))).toEqual([
      `RO1 ${unit.slice(-1)} light ${value} 2`,
    ]);
  });

  test('that fits no row leaves the message to plain English', async () => {
    const yaml = 'messages: [{ when: light steady, only: { unit: Z }, signal: light, value: "off" }]\n';
    const read = await readText('x.csv', journal('RO1-A,light steady'), { phrasebook: yaml });
    expect(told(read)).toEqual(['RO1 A light steady 2']);
  });
});

describe('ignoreUnits', () => {
  test('ignores rows of such units in every layout, and makes no pair of them', async () => {
    const phrasebook = 'ignoreUnits: ["^HMI"]\n';
    const files = {
      'journal.csv': journal('HMI-A,role active', 'RO1-A,role active'),
      'poll.csv':
        'time,unit,parameter,value\n2026-03-14T09:00:00Z,HMI-A,role,active\n2026-03-14T09:00:00Z,RO1-A,role,active\n',
      'snaps.csv':
        'time,unit,role,light\n2026-03-14T09:00:00Z,HMI-A,active,off\n2026-03-14T09:00:00Z,RO1-A,active,off\n',
      'lines.log': '2026-03-14T09:00:00Z HMI-B role active\n2026-03-14T09:00:01Z RO1-A role active\n',
    };
    const { files: read } = await readTexts(files, { phrasebook });
    expect(read.map(({ input: { rows } }) => [rows.read, rows.ignored, rows.rejected])).toEqual(
      read.map(() => [2, 1, 0]),
    );
    expect(new Set(read.flatMap((f) => f.streams.map((s) => s.subject.pair)))).toEqual(new Set(['RO1']));
  });
});
