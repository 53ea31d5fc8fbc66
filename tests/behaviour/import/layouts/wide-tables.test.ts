import { describe, expect, test } from 'vitest';
import { journal } from '../../../../src/import/layouts/journal.ts';
import { readings } from '../../../../src/import/layouts/readings.ts';
import { snapshots } from '../../../../src/import/layouts/snapshots.ts';
import { checkImporter } from '../../../support/check-importer.ts';
import { readText } from '../../../support/read-text.ts';

const wide = 'files: [{ match: "*", header: "^(?<unit>[A-Z0-9]+(?:-[AB])?)\\\\.(?<parameter>\\\\w+)$" }]\n';
const at = '2026-03-14 10:00:00.000Z';
const later = '2026-03-14 10:00:10.000Z';

/** A column per tag. */
checkImporter(snapshots, [
  {
    name: 'the header names unit and parameter',
    file: 'wide.csv',
    text: `time;RO1-A.role;RO1-B.role;RO1.partner_ready\n${at};active;standby;yes\n${later};active;standby;no\n`,
    phrasebook: wide,
    changes: [
      '10:00:00.000 RO1 A role active line 2',
      '10:00:00.000 RO1 B role standby line 2',
      '10:00:00.000 RO1 pair partner-ready yes line 2',
      '10:00:00.000..10:00:10.000 RO1 pair partner-ready no line 3',
    ],
  },
  {
    name: 'pair and half apart, and parameters of the phrasebook',
    file: 'wide.csv',
    text: `Stamp,INTAKE-2/A/Rel,INTAKE-2/B/Rel,Operator\n${at},6.2.0,6.4.1,none\n`,
    phrasebook:
      'files: [{ match: "*", columns: { time: Stamp }, header: "^(?<pair>[^/]+)/(?<half>.)/(?<parameter>.+)$" }]\nparameters: { Rel: { signal: firmware } }\n',
    changes: [
      '10:00:00.000 INTAKE-2 A firmware 6.2.0 line 2',
      '10:00:00.000 INTAKE-2 B firmware 6.4.1 line 2',
    ],
  },
  {
    name: 'a half in the header, the pair in the row',
    file: 'wide.csv',
    text: `time,unit,A_light,B_light\n${at},RO1,off,steady\n${at},RO2,off,flashing\n`,
    phrasebook: 'files: [{ match: "*", header: "^(?<half>[AB])_(?<parameter>\\\\w+)$" }]\n',
    changes: [
      '10:00:00.000 RO1 A light off line 2',
      '10:00:00.000 RO1 B light steady line 2',
      '10:00:00.000 RO2 A light off line 3',
      '10:00:00.000 RO2 B light flashing line 3',
    ],
  },
  {
    name: 'the parameter alone, of a file of one half',
    file: 'wide.csv',
    text: `time,tag_light,tag_firmware,spare\n${at},off,6.4.1,7\n`,
    phrasebook: 'files: [{ match: "*", unit: RO1-A, header: "^tag_(?<parameter>\\\\w+)$" }]\n',
    changes: ['10:00:00.000 RO1 A light off line 2', '10:00:00.000 RO1 A firmware 6.4.1 line 2'],
  },
]);

const numbered = (columns: string, more = ''): string =>
  `files: [{ match: "*"${more}, columns: { ${columns} } }]\n`;

/** Columns by their number. */
checkImporter(readings, [
  {
    name: 'behind a preamble, whatever the header says',
    file: 'poll.csv',
    text: `Export;of the shift\nZeit;Ort;Was;Wert;Rest\n${at};RO1-A;load;41,5;x\n${at};RO1-A;light;off;x\n`,
    phrasebook: numbered('time: "#1", unit: "#2", parameter: "#3", value: "#4"'),
    changes: ['10:00:00.000 RO1 A light off line 4'],
    rows: { read: 2 },
  },
  {
    name: 'without a header: the first row is one',
    file: 'poll.csv',
    text: `${at},RO1-A,light,off\n${later},RO1-A,light,steady\n`,
    phrasebook: numbered('time: "#1", unit: "#2", parameter: "#3", value: "#4"'),
    changes: ['10:00:00.000 RO1 A light off line 1', '10:00:00.000..10:00:10.000 RO1 A light steady line 2'],
    rows: { read: 2 },
  },
  {
    name: 'of a file with date, clock, pair and half',
    file: 'poll.csv',
    text: 'a,b,c,d,e,f\n14/03/2026,10:00:00.000,INTAKE-2,A,light,off\n',
    phrasebook: numbered('date: "#1", clock: "#2", pair: "#3", half: "#4", parameter: "#5", value: "#6"'),
    changes: ['10:00:00.000 INTAKE-2 A light off line 2'],
  },
]);

checkImporter(journal, [
  {
    name: 'some columns by number, some by name, in a file without a unit',
    file: 'journal.csv',
    text: `#;When;What\n1;${at};light steady\n`,
    phrasebook: numbered('time: When, message: "#3"', ', unit: RO1-A'),
    changes: ['10:00:00.000 RO1 A light steady line 2'],
  },
]);

describe('a table that its rule does not fit', () => {
  test.each([
    [
      'a column past the last',
      `a,b,c,d\n${at},RO1-A,light,off\n`,
      numbered('time: "#1", unit: "#2", parameter: "#3", value: "#9"'),
      'x.csv: columns.value of the rule for "*" is "#9", but the table has 4 columns. Correct it in the phrasebook: the first column is "#1".',
    ],
    [
      'another column past the last, that is not needed',
      `time,unit,light\n${at},RO1-A,off\n`,
      numbered('class: "#7"'),
      'x.csv: columns.class of the rule for "*" is "#7", but the table has 3 columns.',
    ],
    [
      'a pattern of the header that fits no column',
      `time,unit,light\n${at},RO1-A,off\n`,
      wide,
      'x.csv: the layout is not known: snapshots: files.header matches no column name.',
    ],
    [
      'a pattern of the header that gives no unit',
      `time,tag_light\n${at},off\n`,
      'files: [{ match: "*", header: "^tag_(?<parameter>.*)$" }]',
      'neither files.header nor a column gives the unit',
    ],
  ])('%s: one line says so', async (_what, text, phrasebook, message) => {
    await expect(readText('x.csv', text, { phrasebook })).rejects.toThrow(message);
  });

  test('names the columns that it skipped', async () => {
    const header = `time,RO1-A.light,${Array.from({ length: 7 }, (_, i) => `spare ${i}`).join(',')}`;
    const read = await readText('x.csv', `${header}\n${at},off,1,2,3,4,5,6,7\n`, { phrasebook: wide });
    expect(read.reasons[0]).toContain(
      'of one column as files.header says; skipped: "spare 0", "spare 1", "spare 2", "spare 3", "spare 4" and 2 more',
    );
    expect(read.columns.slice(0, 3)).toEqual([
      { name: 'time', meaning: 'time' },
      { name: 'RO1-A.light', meaning: 'light' },
      { name: 'spare 0', meaning: null },
    ]);
  });

  test('says that it has no header, and where its first row stands', async () => {
    const read = await readText('x.csv', `${at},RO1-A,light,off\n`, {
      phrasebook: numbered('time: "#1", unit: "#2", parameter: "#3", value: "#4"'),
    });
    expect(read.reasons[0]).toContain('it has no header, and its first row is line 1');
  });
});
