/** A condition and whether it stands. */

import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile, Notice } from '../../../../src/vocabulary.ts';
import { analyseTexts, readText } from '../../../support/read-text.ts';

const rule = [
  'files:',
  '  - match: alarms.csv',
  '    columns: { time: When, unit: Source, message: Condition, state: State }',
  "    states: { ACTIVE: on, CLEARED: 'off' }",
  '',
].join('\n');

const alarms = (...rows: readonly string[]): string =>
  `When,Source,Condition,State\n${rows.map((row, i) => `2026-03-14T09:${10 + i}:00Z,${row}\n`).join('')}`;

async function told(text: string, phrasebook: string): Promise<readonly string[]> {
  const { changes } = await readText('alarms.csv', text, { phrasebook });
  return allChanges(changes).map(({ signal, value, line }) => `${signal} ${value ?? '-'} ${line}`);
}

const notices = ({ notices: all }: ImportedFile): readonly Notice[] =>
  all.filter((n) => n.id !== 'zone-assumed');

describe('states', () => {
  // The five pairs of words of design.md, section 3, and what else has just two values.
  test.each([
    ['partner ready', 'partner-ready yes', 'partner-ready no'],
    ['partner absent', 'partner-present no', 'partner-present yes'],
    ['link a down', 'link-a down', 'link-a up'],
    ['links crossed', 'links crossed', 'links straight'],
    ['configuration pending', 'configuration pending', 'configuration current'],
    ['supply fault', 'supply fault', 'supply good'],
  ])('"%s" says %s where it stands, %s where it does not', async (message, on, off) => {
    expect(await told(alarms(`RO1-A,${message},ACTIVE`, `RO1-A,${message},cleared`), rule)).toEqual([
      `${on} 2`,
      `${off} 3`,
    ]);
  });

  test('that change within one second are two lines, not one twice', async () => {
    const text =
      'When,Source,Condition,State\n2026-03-14T09:00:00Z,RO1-A,link a down,ACTIVE\n2026-03-14T09:00:00Z,RO1-A,link a down,CLEARED\n';
    expect(await told(text, rule)).toEqual(['link-a down 2', 'link-a up 3']);
  });

  const own = `${rule}messages:
  - { when: lamp test, signal: light, value: steady, off: 'off' }
  - { when: on duty, signal: role, value: active }
  - { when: rebooted, signal: restart, off: ignore }
  - { when: taken out, signal: removed }
`;
  test('take off: where there is no other value, also to say nothing', async () => {
    const rows = ['lamp test,ACTIVE', 'lamp test,CLEARED', 'rebooted,ACTIVE', 'rebooted,CLEARED'];
    expect(await told(alarms(...rows.map((row) => `RO1-A,${row}`)), own)).toEqual([
      'light steady 2',
      'light off 3',
      'restart - 4',
    ]);
  });

  test('without either the row is not understood, and a notice says which rule needs off:', async () => {
    const rows = ['on duty,CLEARED', 'taken out,CLEARED', 'on duty,CLEARED'].map((row) => `RO1-A,${row}`);
    const read = await readText('alarms.csv', alarms(...rows), { phrasebook: own });
    expect([read.changes.length, read.input.rows.unmatched]).toEqual([0, 3]);
    expect(notices(read).map((n) => `${n.what} ${n.fix}`)).toEqual(
      expect.arrayContaining([
        'When the condition clears, messages[1] does not say what role becomes: 2 rows were not recognised. Add off: and a value of role to messages[1], or off: ignore.',
        expect.stringContaining('messages[3] does not say what removed becomes: one row was not recognised.'),
      ]),
    );
  });

  test('that are not listed are ignored; one that is no stray is named', async () => {
    const some = (state: string, count: number): readonly string[] =>
      Array.from({ length: count }, () => `RO1-A,supply fault,${state}`);
    const text = alarms(...some('ACTIVE', 1), ...some('SHELVED', 3), ...some('ACKED', 4));
    const read = await readText('alarms.csv', text, { phrasebook: rule });
    expect(read.input.rows).toMatchObject({ read: 8, used: 1, ignored: 7 });
    expect(notices(read).map(({ id, what, lines: [{ line }] }) => [id, what, line])).toEqual([
      [
        'unmatched-wording',
        '4 rows were ignored because their state is not in files[0].states: "ACKED" (4 rows).',
        6,
      ],
    ]);
  });

  test('of which none that occurs is listed are a warning', async () => {
    const analysed = await analyseTexts(
      { 'alarms.csv': alarms('RO1-A,supply fault,Raised', 'RO1-A,supply fault,Gone') },
      { phrasebook: rule },
    );
    const [found] = analysed.findings.filter((f) => f.id === 'states-not-listed');
    expect([found?.severity, found?.statement]).toEqual([
      'warning',
      'alarms.csv: None of the states in its rows is in files[0].states, so no row could be used: "Raised" (one row), "Gone" (one row). List which of them mean that a condition is active: files[0].states: { "Raised": on }, or off.',
    ]);
  });

  test('need a column: one that is named and not there is an error, none a notice', async () => {
    const text = 'When,Source,Condition\n2026-03-14T09:00:00Z,RO1-A,supply fault\n';
    await expect(readText('alarms.csv', text, { phrasebook: rule })).rejects.toThrow(
      'alarms.csv: the phrasebook\'s files[0].columns.state is "State", and its header has no such column. Name one of When, Source, Condition, or remove the key.',
    );
    const read = await readText('alarms.csv', text, { phrasebook: rule.replace(', state: State', '') });
    expect(notices(read).map((n) => n.what)).toEqual([
      "The phrasebook's files[0].states has no effect: as journal the file has no column that is read as state.",
    ]);
  });

  test('are read in JSON lines too', async () => {
    const line = (state: string): string =>
      `{"time":"2026-03-14T09:00:00Z","unit":"RO1-A","message":"link a down","st":"${state}"}\n`;
    const phrasebook = 'files: [{ match: "*", columns: { state: st }, states: { up: on, over: "off" } }]\n';
    const { changes } = await readText('x.json', line('up') + line('over'), { phrasebook });
    expect(allChanges(changes).map((c) => c.value)).toEqual(['down', 'up']);
  });
});
