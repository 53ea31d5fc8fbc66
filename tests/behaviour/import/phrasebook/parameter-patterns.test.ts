/** Names of parameters that say of which unit they are. */

import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText } from '../../../support/read-text.ts';

function told({ changes }: ImportedFile): readonly string[] {
  return allChanges(changes).map(({ subject: { pair, half, role }, signal, value, line }) =>
    [pair, half ?? role ?? 'pair', signal, value ?? '-', line].join(' '),
  );
}

const tall = (...rows: readonly string[]): string =>
  `time,parameter,value\n${rows.map((row, i) => `2026-03-14T09:0${i}:00Z,${row}\n`).join('')}`;

const duty =
  'parameters:\n  /^(?<unit>RO\\d-[AB])\\.Duty$/: { signal: role, values: { "1": active, "2": standby } }\n';

describe('a pattern between slashes', () => {
  test('names the unit of a table that has none', async () => {
    const read = await readText('x.csv', tall('RO1-A.Duty,1', 'RO1-B.Duty,2', 'RO2-A.Duty,1'), {
      phrasebook: duty,
    });
    expect(told(read)).toEqual(['RO1 A role active 2', 'RO1 B role standby 3', 'RO2 A role active 4']);
    expect(read.input.units).toEqual(['RO1-A', 'RO1-B', 'RO2-A']);
  });

  test('names it where the unit is the tag itself, and in a snapshot by its columns', async () => {
    const tags = 'time,unit,parameter,value\n2026-03-14T09:00:00Z,RO1-A.Duty,RO1-A.Duty,1\n';
    expect(told(await readText('x.csv', tags, { phrasebook: duty }))).toEqual(['RO1 A role active 2']);
    const wide = 'time,RO1-A.Duty,RO1-B.Duty\n2026-03-14T09:00:00Z,1,2\n';
    expect(told(await readText('x.csv', wide, { phrasebook: duty }))).toEqual([
      'RO1 A role active 2',
      'RO1 B role standby 2',
    ]);
  });

  test('names pair, half or role beside what the row says', async () => {
    const phrasebook = [
      'parameters:',
      '  /^(?<pair>RO\\d)_(?<half>[AB])_rel$/: { signal: firmware }',
      '  /^Slot (?<half>[AB]) lamp$/: { signal: light }',
      '  /^(?<role>Active|Standby) rel$/: { signal: firmware }',
      '',
    ].join('\n');
    const text = `time,unit,parameter,value\n${[
      'HIST,RO1_B_rel,6.2.0',
      'RO2,Slot A lamp,off',
      'RO2,Standby rel,6.4.1',
    ]
      .map((row) => `2026-03-14T09:00:00Z,${row}\n`)
      .join('')}`;
    expect(told(await readText('x.csv', text, { phrasebook }))).toEqual([
      'RO1 B firmware 6.2.0 2',
      'RO2 A light off 3',
      'RO2 standby firmware 6.4.1 4',
    ]);
  });

  test('names a value of two: the reading is a flag of it', async () => {
    const phrasebook = 'parameters:\n  /^(?<unit>RO1-A)\\.Link(?<value>Up|Down)$/: { signal: link-a }\n';
    const read = await readText('x.csv', tall('RO1-A.LinkDown,0', 'RO1-A.LinkDown,1', 'RO1-A.LinkDown,?'), {
      phrasebook,
    });
    expect(told(read)).toEqual(['RO1 A link-a up 2', 'RO1 A link-a down 3']);
    expect(read.input.unmatched.map((u) => u.wording)).toEqual(['RO1-A.LinkDown = ?']);
  });

  test('comes after a name to the letter, and before plain English', async () => {
    const phrasebook = `parameters:
  /^(?<unit>RO1-A)\\.l/: { signal: light }
  RO1-A.load: { signal: note }
  /^light$/: { signal: light, values: { lit: steady } }
`;
    const exact = await readText(
      'x.csv',
      'time,unit,parameter,value\n2026-03-14T09:00:00Z,RO2-B,RO1-A.load,x\n2026-03-14T09:00:00Z,RO2-B,light,lit\n',
      { phrasebook },
    );
    expect(told(exact)).toEqual(['RO2 B note x 2', 'RO2 B light steady 3']);
  });

  test('leaves what it does not fit without a unit: the parameter is listed, and no pair is made', async () => {
    const read = await readText('x.csv', tall('RO1-A.Duty,1', 'Pump7.Flow,3'), { phrasebook: duty });
    expect(read.input.unmatched.map((u) => u.wording)).toEqual(['parameter Pump7.Flow']);
    expect(new Set(read.streams.map((s) => s.subject.pair))).toEqual(new Set(['', 'RO1']));
    const ignored = await readText('x.csv', tall('RO1-A.Duty,1', 'Pump7.Flow,3'), {
      phrasebook: `${duty}ignore: ["^Pump"]\n`,
    });
    expect(ignored.input.rows).toMatchObject({ used: 1, ignored: 1, unmatched: 0 });
  });
});
