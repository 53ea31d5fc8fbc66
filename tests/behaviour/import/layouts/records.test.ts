import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import { fieldNotes } from '../../../../src/import/layouts/field-notes.ts';
import { lines } from '../../../../src/import/layouts/lines.ts';
import { checkImporter } from '../../../support/check-importer.ts';
import { readText } from '../../../support/read-text.ts';

const dated = 'files: [{ match: "*", record: "^\\\\d{4}-" }]\n';

checkImporter(lines, [
  {
    name: 'lines that follow belong to the message, joined by a blank',
    file: 'events.log',
    text: '2026-03-14 10:00:00.000Z RO1-A light\n    steady\n\n2026-03-14 10:00:01.000Z RO1\tpartner\r\n not\r\n ready\r\n',
    phrasebook: dated,
    changes: ['10:00:00.000 RO1 A light steady line 1', '10:00:01.000 RO1 pair partner-ready no line 4'],
    rows: { read: 2, used: 2 },
  },
  {
    name: 'before a line pattern, which sees all of it',
    file: 'own.log',
    text: '2026-03-14 10:00:00.000Z\n  unit: RO1-A\n  role active\n2026-03-14 10:00:01.000Z\n  unit: RO1-B\n  role standby\n',
    phrasebook:
      'files: [{ match: "*", record: "^\\\\d{4}-", line: "^(?<time>\\\\S+ \\\\S+) unit: (?<unit>\\\\S+) (?<message>.*)$" }]\n',
    changes: ['10:00:00.000 RO1 A role active line 1', '10:00:01.000 RO1 B role standby line 4'],
    rows: { read: 2 },
  },
  {
    name: 'JSON over several lines',
    file: 'events.json',
    text: '{\n  "time": "2026-03-14T10:00:00.0Z",\n  "unit": "RO1-A",\n  "role": "active"\n}\n{\n  "time": "2026-03-14T10:00:01.0Z",\n  "unit": "RO1",\n  "message": "partner ready"\n}\n',
    phrasebook: 'files: [{ match: "*", record: "^\\\\{" }]\n',
    changes: ['10:00:00.000 RO1 A role active line 1', '10:00:01.000 RO1 pair partner-ready yes line 6'],
    rows: { read: 2 },
  },
  {
    name: 'key=value over several lines',
    file: 'events.kv',
    text: 'time=2026-03-14T10:00:00.0Z\nunit=RO1-A\nrole=active\n\ntime=2026-03-14T10:00:01.0Z\nunit=RO1-B\nrole=standby\n',
    phrasebook: 'files: [{ match: "*", record: "^time=" }]\n',
    changes: ['10:00:00.000 RO1 A role active line 1', '10:00:01.000 RO1 B role standby line 5'],
  },
  {
    name: 'RFC 5424 with a message of several lines',
    file: 'messages',
    text: '<30>1 2026-03-14T10:00:00.000Z RO1-A core - - - light\nflashing\n<30>1 2026-03-14T10:00:01.000Z RO1-A core - - - light steady\n',
    phrasebook: 'files: [{ match: "*", record: "^<\\\\d+>" }]\n',
    changes: ['10:00:00.000 RO1 A light flashing line 1', '10:00:01.000 RO1 A light steady line 3'],
  },
  {
    name: 'what stands before the first record is one row, which is rejected',
    file: 'rotated.log',
    text: '  of a record\n  of the file before\n2026-03-14 10:00:00.000Z RO1-A light steady\n',
    phrasebook: dated,
    changes: ['10:00:00.000 RO1 A light steady line 3'],
    rows: { read: 2, used: 1, rejected: 1 },
  },
  {
    name: 'records out of order are sorted as rows are',
    file: 'events.log',
    text: [5, 6, 3, 7]
      .map(
        (s) =>
          `{"time":"2026-03-14T10:00:0${s}.0Z","unit":"RO1-A",\n"light":"${s === 3 ? 'off' : 'steady'}"}\n`,
      )
      .join(''),
    phrasebook: 'files: [{ match: "*", record: "^\\\\{" }]\n',
    changes: ['10:00:03.000 RO1 A light off line 5', '10:00:03.000..10:00:05.000 RO1 A light steady line 1'],
  },
]);

checkImporter(fieldNotes, [
  {
    name: 'a note of several lines',
    file: 'notes.txt',
    text: '09:14 pulled the module\n  out of slot B\n09:20 fitted it\n',
    phrasebook: 'files: [{ match: "*", unit: RO1, record: "^\\\\d\\\\d:" }]\n',
    neighbour: Date.UTC(2026, 2, 14),
    changes: [
      '09:14:00.000..09:15:00.000 RO1 B removed - line 1',
      '09:20:00.000..09:21:00.000 RO1 pair inserted - line 3',
    ],
  },
]);

describe('records', () => {
  test('are cited by their first line', async () => {
    const read = await readText('a.log', '2026-03-14 10:00:00Z RO1-A light\n  steady\n', {
      phrasebook: dated,
    });
    expect(allChanges(read.changes).map((c) => [c.line, c.text])).toEqual([
      [1, '2026-03-14 10:00:00Z RO1-A light'],
    ]);
  });

  test('that are cut off at the end are said to be', async () => {
    const text = '2026-03-14 10:00:00Z RO1-A light\n  steady\n{ "time": "2026-03-14T1';
    const read = await readText('a.log', text, {
      phrasebook: 'files: [{ match: "*", record: "^(\\\\d{4}-|\\\\{)" }]\n',
    });
    expect(read.notices.map((n) => [n.id, n.lines[0].line])).toEqual([['damaged-tail', 3]]);
    expect(read.input.rows).toMatchObject({ read: 2, used: 1, rejected: 1 });
  });

  test('of a pattern that fits no line: one line says so', async () => {
    const text = '2026-03-14 10:00:00Z RO1-A light steady\n';
    await expect(
      readText('a.log', text, { phrasebook: 'files: [{ match: "*.log", layout: lines, record: "^#" }]\n' }),
    ).rejects.toThrow(
      'a.log: no line begins a record: the pattern `record` of the rule for "*.log" matches none. Correct',
    );
    await expect(
      readText('a.log', text, { phrasebook: 'files: [{ match: "*.log", record: "^#" }]\n' }),
    ).rejects.toThrow('a.log: no line begins a record');
  });

  test('that no line ends stay within what a line may hold', async () => {
    const more = `${'x'.repeat(1000)}\n`.repeat(3000);
    const text = `2026-03-14 10:00:00Z RO1-A light steady\n${more}2026-03-14 10:00:01Z RO1-A light off\n`;
    const read = await readText('a.log', text, { phrasebook: dated });
    expect(read.input.rows).toMatchObject({ read: 2, used: 1, unmatched: 1 });
    // One mebibyte at most, as of a line.
    expect(read.unknown.map((u) => u.wording.length <= 1_048_576)).toEqual([true]);
  });

  test('give the same whatever the seams between chunks', async () => {
    const text =
      '2026-03-14 10:00:00Z RO1-A light\r\n  steady\r\n\r\n2026-03-14 10:00:01Z RO1-A light\r\n off\r\n';
    const whole = await readText('a.log', text, { phrasebook: dated });
    expect(allChanges(whole.changes).map((c) => c.value)).toEqual(['steady', 'off']);
    for (let chunk = 1; chunk < 60; chunk += 1)
      expect(await readText('a.log', text, { phrasebook: dated, chunk })).toEqual(whole);
  });

  test('do not let a date within one settle the order of day and month', async () => {
    const text = '03/04/2026 10:00:00 RO1-A light steady\n13/04/2026 in a line that follows\n';
    await expect(
      readText('a.log', text, {
        phrasebook: 'files: [{ match: "*", record: "^\\\\d+/\\\\d+/\\\\d+ \\\\d" }]\n',
      }),
    ).rejects.toThrow(/"03\/04\/2026" is 3 Apr 2026 if the day comes first/);
  });
});
