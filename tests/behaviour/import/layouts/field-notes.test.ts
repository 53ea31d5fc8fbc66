import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import { fieldNotes } from '../../../../src/import/layouts/field-notes.ts';
import { checkImporter } from '../../../support/check-importer.ts';
import { readText } from '../../../support/read-text.ts';

checkImporter(fieldNotes, [
  {
    name: 'a date and a pair hold for the lines that follow; a note lasts its minute',
    file: 'notes.txt',
    text: 'Pair RO1\n14 Mar 2026\n09:14 pulled standby from slot B\n09:41 switched over\n10:02 cabinet closed\n',
    changes: [
      '09:14:00.000..09:15:00.000 RO1 B removed - line 3',
      '09:41:00.000..09:42:00.000 RO1 pair switchover-command - line 4',
      '10:02:00.000..10:03:00.000 RO1 pair note cabinet closed line 5',
    ],
    rows: { read: 5, used: 3, ignored: 2 },
  },
  {
    name: 'a date on every line is no reason to take the first word for a unit',
    file: 'notes.txt',
    text: 'Pair RO1\n2026-03-14 09:14 pulled standby from slot B\n2026-03-14 09:41 switched over\n',
    changes: [
      '09:14:00.000..09:15:00.000 RO1 B removed - line 2',
      '09:41:00.000..09:42:00.000 RO1 pair switchover-command - line 3',
    ],
  },
  {
    name: 'a half may be named by its letter alone, where no article stands',
    file: 'notes.txt',
    text: 'RO1\n14 Mar 2026\n09:14 pulled B (old one)\n09:16 fitted module B\n09:30 pulled A\n09:40 Fitted A new standby\n',
    changes: [
      '09:14:00.000..09:15:00.000 RO1 B removed - line 3',
      '09:16:00.000..09:17:00.000 RO1 B inserted - line 4',
      '09:30:00.000..09:31:00.000 RO1 A removed - line 5',
      '09:40:00.000..09:41:00.000 RO1 standby inserted - line 6',
    ],
  },
  {
    name: 'what was not done, or not yet, is a note',
    file: 'notes.txt',
    text: 'RO1\n14 Mar 2026\n09:14 standby not removed yet\n09:20 will pull slot B after lunch\n09:30 pulled slot B before lunch\n',
    changes: [
      '09:14:00.000..09:15:00.000 RO1 pair note standby not removed yet line 3',
      '09:20:00.000..09:21:00.000 RO1 pair note will pull slot B after lunch line 4',
      '09:30:00.000..09:31:00.000 RO1 B removed - line 5',
    ],
  },
  {
    name: 'without a date the day of the other files counts',
    file: 'notes.txt',
    text: 'RO1\n09:14 fitted new module in slot B\n',
    neighbour: Date.UTC(2026, 2, 14, 8),
    changes: ['09:14:00.000..09:15:00.000 RO1 B inserted - line 2'],
  },
  {
    name: 'words in capitals, serials and lines of one word are no pairs; a clock is not half of a word',
    file: 'notes.txt',
    text: 'RO1\n14 Mar 2026\n09:20 checked PSU and LED\n09:21 fitted TN4-0231 in slot b\nDone\n14:10 amended the permit\n14:20 in place of the old one, after half a minute\n',
    changes: [
      '09:20:00.000..09:21:00.000 RO1 pair note checked PSU and LED line 3',
      '09:21:00.000..09:22:00.000 RO1 B inserted - line 4',
      '14:10:00.000..14:11:00.000 RO1 pair note amended the permit line 6',
      '14:20:00.000..14:21:00.000 RO1 pair note in place of the old one, after half a minute line 7',
    ],
    rows: { read: 7, used: 4, ignored: 3 },
  },
  {
    name: 'takes pair and half from a unit that a line names, and a reflash by its wording',
    file: 'notes.txt',
    text: '14 Mar 2026\n09:14 pulled RO1-B\n09:20 flashing slot B to 6.4.1\n09:30 reflashed slot B\n',
    changes: [
      '09:14:00.000..09:15:00.000 RO1 B removed - line 2',
      '09:20:00.000..09:21:00.000 RO1 B reflash-start - line 3',
      '09:30:00.000..09:31:00.000 RO1 B reflash-end - line 4',
    ],
  },
  {
    name: 'a date before or behind the clock is the day; one in the midst of a note is not',
    file: 'notes.txt',
    text: 'RO1\n14 Mar 2026 09:14 pulled slot B\n09:15 label says 02/01/2025\n09:16 light steady\n',
    changes: [
      '09:14:00.000..09:15:00.000 RO1 B removed - line 2',
      '09:15:00.000..09:16:00.000 RO1 pair note label says 02/01/2025 line 3',
      '09:16:00.000..09:17:00.000 RO1 standby light steady line 4',
    ],
    rows: { read: 4, used: 3, ignored: 1 },
  },
]);

describe('lines with a clock that are no field notes are refused in one line', () => {
  const refused = (text: string, phrasebook?: string): Promise<unknown> =>
    readText('mail.log', text, { neighbour: Date.UTC(2026, 2, 14), ...(phrasebook ? { phrasebook } : {}) });

  test.each([
    [
      'a mail log with its protocols',
      '09:14:22 connect from relay by HTTP/1.1 200\n09:14:23 accepted HTTP/1.1 250\n09:14:25 lost connection HTTP/1.1\n',
      'field-notes: its lines were written by a program',
    ],
    [
      'a mail log in words',
      '09:14 message accepted for delivery via HTTP/1\n09:14 queue active\n09:15 connection closed\n09:16 delivered\n09:17 connection lost\n09:18 message bounced\n',
      'field-notes: too few lines describe work on a pair',
    ],
    [
      'a mail log of fields',
      '09:14:22 queued id=A1 from=<a@mail.example> light=1\n09:14:23 sent id=A1 relay=10.0.0.7 module=smtp\n',
      'field-notes: its lines were written by a program',
    ],
    [
      'a diary',
      '08:00 breakfast\n09:30 called the office\n11:00 meeting about holidays\n12:00 lunch\n13:00 nap\n15:00 walk\n',
      'field-notes: too few lines describe work on a pair',
    ],
  ])('%s', async (_name, text, because) => {
    const error = refused(text);
    await expect(error).rejects.toThrow(`mail.log: the layout is not known: `);
    await expect(error).rejects.toThrow(because);
    await expect(error).rejects.not.toThrow('\n');
  });

  test('a protocol and its version in a note are no pair', async () => {
    const file = await readText(
      'notes.txt',
      'RO1\n14 Mar 2026\n09:14 pulled slot B\n09:20 page of HTTP/1.1 shows standby.\n09:30 fitted RO2-A.\n09:31 slot A. done\n',
    );
    expect(allChanges(file.changes).map((c) => `${c.line} ${c.subject.pair}`)).toEqual([
      '3 RO1',
      '4 RO1',
      '5 RO2',
      '6 RO2',
    ]);
  });

  test('but notes in words of a phrasebook are some, and so is a file of which it says so', async () => {
    const text = 'RO1\n14 Mar 2026\n09:14 retirou B\n09:15 colocou B\n';
    const messages = '{ when: "retirou (?<half>[AB])", signal: removed }';
    await expect(refused(text)).rejects.toThrow('too few lines describe work');
    for (const phrasebook of [
      `messages: [${messages}]\n`,
      'files: [{ match: "*.log", layout: field-notes }]\n',
    ])
      await expect(refused(text, phrasebook)).resolves.toMatchObject({ input: { layout: 'field-notes' } });
  });
});

test('a heading has a date and a pair, in any language, with or without the name of the day', async () => {
  const text = [
    'Saturday 14 March 2026, pair Intake',
    '09:14 pulled slot B',
    'RO2 - So, 15. März 2026:',
    '10.14 Uhr pulled slot A',
    'Pair RO3 3 de abril de 2026',
    '9h14 pulled slot A',
    'RO4 16.04.26',
    '09:15 pulled slot A',
    '17.04.26',
    '9.16.30 pulled slot B',
    'Release 6.4.10',
    '9:17 fitted 2 modules 4711 in slot B',
    '',
  ].join('\n');
  const { changes, input } = await readText('notes.txt', text, { order: 'day-first' });
  expect(
    allChanges(changes).map(({ earliest, subject, signal, line }) =>
      [new Date(earliest).toISOString().slice(0, 19), subject.pair, subject.half, signal, line].join(' '),
    ),
  ).toEqual([
    '2026-03-14T09:14:00 INTAKE B removed 2',
    '2026-03-15T10:14:00 RO2 A removed 4',
    '2026-04-03T09:14:00 RO3 A removed 6',
    '2026-04-16T09:15:00 RO4 A removed 8',
    '2026-04-17T09:16:30 RO4 B removed 10',
    '2026-04-17T09:17:00 RO4 B inserted 12',
  ]);
  expect(input.rows).toMatchObject({ read: 12, used: 6, ignored: 6 });
});
