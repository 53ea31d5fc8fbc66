import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';

const poll = [
  'Stamp,Node,Item,Reading,Remark',
  ...['09:00:00', '09:00:10', '09:00:20', '09:00:30', '09:00:40', '09:05:00'].map(
    (clock) => `2026-03-14 ${clock},RO1-A,Release,6.4.1,`,
  ),
  '2026-03-14 09:05:10,RO1-A,Paint,grey,',
  '',
].join('\n');
const rule = [
  'files:',
  '  - { match: "*.csv", layout: readings, columns: { time: Stamp, unit: Node, parameter: Item, value: Reading } }',
  'parameters: { Release: { signal: firmware } }',
  '',
].join('\n');

describe('inspect', () => {
  test('says what columns, parameters and units became, what is covered, and what is not', async () => {
    const { out } = await steadypair('inspect', fileWith(poll), '--phrasebook', fileWith(rule, 'site.yaml'));
    expect(out).toContain('  Columns: Stamp -> time; Node -> unit; Item -> parameter; Reading -> value.\n');
    expect(out).toContain('  Columns not used: Remark.\n');
    expect(out).toContain('  Parameters: Release -> firmware.\n  Parameters not used: Paint.\n');
    expect(out).toContain('  Units: RO1-A -> half A of RO1.\n');
    expect(out).toContain('  7 rows: 1 used, 5 unchanged, 0 ignored, 1 not recognised, 0 rejected.\n');
    // The last row has its stamp, though nothing was understood of it. 09:05:00 less 09:00:40 is 4 min 20 s, more than three times the 10 s between readings.
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      'It covers 14 Mar 2026 09:00:00 to 14 Mar 2026 09:05:10 UTC. Not observed: one span, the longest 4 min 20 s from 14 Mar 2026 09:00:40 (RO1-A).',
    );
  });

  test('says the same in JSON', async () => {
    const path = fileWith(poll);
    const { out } = await steadypair('inspect', path, '--phrasebook', fileWith(rule, 'site.yaml'), '--json');
    expect(JSON.parse(out)).toMatchObject({
      schema: 'steadypair/inspect/1',
      inputs: [
        {
          file: path,
          columns: [
            { name: 'Stamp', meaning: 'time' },
            { name: 'Node', meaning: 'unit' },
            { name: 'Item', meaning: 'parameter' },
            { name: 'Reading', meaning: 'value' },
            { name: 'Remark', meaning: null },
          ],
          parameters: [
            { name: 'Release', meaning: 'firmware' },
            { name: 'Paint', meaning: null },
          ],
          subjects: [{ unit: 'RO1-A', pair: 'RO1', half: 'A', role: null }],
          unobserved: [{ unit: 'RO1-A', from: '2026-03-14T09:00:40.000Z', to: '2026-03-14T09:05:00.000Z' }],
          unmatched: [{ wording: 'parameter Paint', count: 1, firstLine: 8 }],
        },
      ],
    });
  });
});

describe('inspect --draft-phrasebook', () => {
  const journal = [
    'time,unit,message',
    '2026-03-14T09:00:00Z,RO1-B,lamp 1 burns',
    '2026-03-14T09:01:00Z,RO1-B,lamp 1 is out (again)',
    '2026-03-14T09:02:00Z,RO1-B,lamp 1 burns',
    '',
  ].join('\n');
  const draftOf = async (text: string): Promise<{ readonly path: string; readonly file: string }> => {
    const path = join(mkdtempSync(join(tmpdir(), 'draft-')), 'site.yaml');
    const file = fileWith(text, 'journal.csv');
    expect((await steadypair('inspect', file, '--draft-phrasebook', path)).status).toBe(0);
    return { path, file };
  };
  const rows = async (file: string, phrasebook: string): Promise<unknown> =>
    JSON.parse((await steadypair('inspect', file, '--phrasebook', phrasebook, '--json')).out).inputs[0].rows;

  test('can be read as it is, and filled in for two wordings all rows are used', async () => {
    const { path, file } = await draftOf(journal);
    expect(await rows(file, path)).toMatchObject({ read: 3, used: 0, unmatched: 3 });
    const filled = readFileSync(path, 'utf8')
      .replace(/^#( {2}- \{ when: "\^lamp 1 burns\$", signal: )___, value: ___/m, '$1light, value: steady')
      // What came once may come with another number: it is made general.
      .replace(
        /^#( {2}- \{ when: "\^lamp \\\\d.* is out .*", signal: )___, value: ___/m,
        '$1light, value: off',
      );
    writeFileSync(path, filled);
    expect(await rows(file, path)).toMatchObject({ read: 3, used: 3, unmatched: 0 });
  });

  test('says of a rule whose blanks are left what is missing', async () => {
    const { path, file } = await draftOf(journal);
    writeFileSync(path, readFileSync(path, 'utf8').replace('#  - { when', '  - { when'));
    const { status, err } = await steadypair('inspect', file, '--phrasebook', path);
    expect(status).toBe(2);
    expect(err).toContain('messages[0].value is "___", expected a word in place of the blank.');
  });

  test('lists parameters with their values, units, and the columns of the file', async () => {
    const { path } = await draftOf(
      [
        'time,unit,parameter,value',
        '2026-03-14 09:00:00,RO1-A,Lamp,1',
        '2026-03-14 09:00:10,RO1-A,Lamp,2',
        '2026-03-14 09:00:10,?!,light,off',
        '2026-03-14 09:00:10,RO1,partner ready,yes',
        '',
      ].join('\n'),
    );
    const draft = readFileSync(path, 'utf8');
    expect(draft).toContain('#time: { zone: ___ }');
    expect(draft).toContain(
      '  - match: "journal.csv"\n    layout: readings\n    columns: { time: "time", unit: "unit", parameter: "parameter", value: "value" }\n',
    );
    expect(draft).toMatch(/^ {2}"light": \{ signal: light, values: \{ "off": "off" \} \}/m);
    expect(draft).toMatch(
      /^# {2}"Lamp": \{ signal: ___, values: \{ "1": ___, "2": ___ \} \} {4}# 2 times; perhaps light;/m,
    );
    expect(draft).toContain('#  - { pattern: "^\\\\?!$", pair: ___, half: ___ }');
  });

  test('writes over no file', async () => {
    const { path, file } = await draftOf(journal);
    const before = readFileSync(path, 'utf8');
    const { status, err } = await steadypair('inspect', file, '--draft-phrasebook', path);
    expect(status).toBe(2);
    expect(err).toBe(
      `${path}: a file of that name already exists. Choose another name, or move that file.\n`,
    );
    expect(readFileSync(path, 'utf8')).toBe(before);
  });

  test('is a phrasebook whatever the log holds', async () => {
    const hostile = ['"', "'", '#', ': {', '\u0085', '\u2028', '\u0007', '- [', '$1', '\\', '=1+1', '*?'];
    const { path, file } = await draftOf(
      [
        'time,unit,message',
        ...hostile.map((t) => `2026-03-14T09:00:00Z,RO1,"x${t.replace('"', '""')}y"`),
        '',
      ].join('\n'),
    );
    expect(await rows(file, path)).toMatchObject({ read: 12, unmatched: 12 });
    const draft = readFileSync(path, 'utf8');
    writeFileSync(
      path,
      draft.replaceAll('#  - { when', '  - { when').replaceAll('signal: ___, value: ___', 'signal: fault'),
    );
    expect(await rows(file, path)).toMatchObject({ read: 12, used: 12 });
  });
});
