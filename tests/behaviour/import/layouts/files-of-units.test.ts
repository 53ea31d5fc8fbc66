import { describe, expect, test } from 'vitest';
import { fieldNotes } from '../../../../src/import/layouts/field-notes.ts';
import { journal } from '../../../../src/import/layouts/journal.ts';
import { lines } from '../../../../src/import/layouts/lines.ts';
import { readings } from '../../../../src/import/layouts/readings.ts';
import { snapshots } from '../../../../src/import/layouts/snapshots.ts';
import { checkImporter } from '../../../support/check-importer.ts';
import { readText, readTexts } from '../../../support/read-text.ts';

const ofHalf = 'files: [{ match: "*", unit: RO1-A }]\n';
const byPath = 'files: [{ match: "**/*", path: "(?<pair>[A-Z0-9-]+)/(?<half>[AB])/" }]\n';
const at = '2026-03-14 10:00:00.000Z';

checkImporter(lines, [
  {
    name: 'a file of one unit: what follows the stamp is the message',
    file: 'events.log',
    text: `${at} role active\n${at} INFO partner ready\n${at} [core] light steady\n`,
    phrasebook: ofHalf,
    changes: [
      '10:00:00.000 RO1 A role active line 1',
      '10:00:00.000 RO1 pair partner-ready yes line 2',
      '10:00:00.000 RO1 A light steady line 3',
    ],
  },
  {
    name: 'what a line says itself comes before what its file says',
    file: 'events.log',
    text: `${at} RO1-B light steady\n${at} RO1 partner ready\n${at} standby in slot B removed\n`,
    phrasebook: ofHalf,
    changes: [
      '10:00:00.000 RO1 B light steady line 1',
      '10:00:00.000 RO1 pair partner-ready yes line 2',
      '10:00:00.000 RO1 B removed - line 3',
    ],
  },
  {
    name: 'a host that no unit pattern of the site fits is no unit',
    file: 'RO1/A/messages',
    text: '<30>1 2026-03-14T10:00:00.000Z ctl-2 core - - - role active\n<30>1 2026-03-14T10:00:01.000Z localhost core - - - role standby\n',
    phrasebook: byPath,
    changes: ['10:00:00.000 RO1 A role active line 1', '10:00:01.000 RO1 A role standby line 2'],
  },
  {
    name: 'a host that one fits is',
    file: 'RO1/A/messages',
    text: '<30>1 2026-03-14T10:00:00.000Z ctl-2 core - - - role active\n',
    phrasebook: `${byPath}units: [{ pattern: "^ctl-(?<half>[0-9])$", pair: RO7 }]\n`,
    changes: ['10:00:00.000 RO7 2 role active line 1'],
  },
  {
    name: 'JSON lines and key=value without a unit',
    file: 'exports/INTAKE-2/B/events.json',
    text: '{"time":"2026-03-14T10:00:00.0Z","role":"active"}\n{"time":"2026-03-14T10:00:01.0Z","message":"light steady"}\n',
    phrasebook: byPath,
    changes: ['10:00:00.000 INTAKE-2 B role active line 1', '10:00:01.000 INTAKE-2 B light steady line 2'],
  },
  {
    name: 'the role of the half whose file it is, by a group of the line pattern',
    file: 'events.log',
    text: `${at} STANDBY partner ready\n${at} ACTIVE partner not ready\n`,
    phrasebook:
      'files: [{ match: "*", unit: RO1-A, line: "^(?<time>\\\\S+ \\\\S+) (?<role>\\\\w+) (?<message>.*)$" }]\n',
    changes: [
      '10:00:00.000 RO1 pair partner-ready yes line 1',
      '10:00:00.000 RO1 A role standby line 1',
      '10:00:00.000 RO1 pair partner-ready no line 2',
      '10:00:00.000 RO1 A role active line 2',
    ],
  },
]);

checkImporter(journal, [
  {
    name: 'a journal of one half, and a column that says another',
    file: 'C:\\exports\\RO1\\A\\journal.csv',
    text: `time,half,message\n${at},,light steady\n${at},B,light off\n`,
    phrasebook: byPath,
    changes: ['10:00:00.000 RO1 A light steady line 2', '10:00:00.000 RO1 B light off line 3'],
  },
  {
    name: 'a column named like a unit that holds none',
    file: 'journal.csv',
    text: `time,source,message\n${at},fieldbus,light steady\n${at},kernel,light off\n`,
    phrasebook: ofHalf,
    changes: ['10:00:00.000 RO1 A light steady line 2', '10:00:00.000 RO1 A light off line 3'],
  },
]);

checkImporter(readings, [
  {
    name: 'a poll of one half',
    file: 'poll.csv',
    text: `time,parameter,value\n${at},light,steady\n${at},firmware,6.4.1\n`,
    phrasebook: ofHalf,
    changes: ['10:00:00.000 RO1 A light steady line 2', '10:00:00.000 RO1 A firmware 6.4.1 line 3'],
  },
]);

checkImporter(snapshots, [
  {
    name: 'snapshots of one half, with its role',
    file: 'poll.csv',
    text: `time,role,firmware\n${at},active,6.4.1\n`,
    phrasebook: ofHalf,
    changes: ['10:00:00.000 RO1 A role active line 2', '10:00:00.000 RO1 A firmware 6.4.1 line 2'],
  },
]);

checkImporter(fieldNotes, [
  {
    name: 'notes of one half: a slot that a line names comes first',
    file: 'RO1/A/notes.txt',
    text: '14 Mar 2026\n09:14 pulled module\n09:20 fitted module in slot B\n',
    phrasebook: byPath,
    changes: [
      '09:14:00.000..09:15:00.000 RO1 A removed - line 2',
      '09:20:00.000..09:21:00.000 RO1 B inserted - line 3',
    ],
  },
]);

describe('a file of which its rule should say whose it is', () => {
  const text = `${at} role active\n`;
  test.each([
    [
      'does not fit the pattern',
      'RO1/C/events.log',
      byPath,
      'the pattern `path` of the rule for "**/*" does not fit it.',
    ],
    [
      'gives no pair',
      'x/A/events.log',
      'files: [{ match: "*.log", path: "(?<pair>RO[0-9])?/(?<half>[AB])/" }]',
      'of the rule for "*.log" gives no pair.',
    ],
    ['gives a severity', 'INFO/A/events.log', byPath, 'gives "INFO", which names no pair.'],
    [
      'gives no role that is one',
      'RO1/third/events.log',
      'files: [{ match: "*.log", path: "(?<pair>RO[0-9])/(?<role>[a-z]+)/" }]',
      'gives the role "third", which is not a role.',
    ],
  ])('is refused in one line where its path %s', async (_what, file, phrasebook, message) => {
    await expect(readText(file, text, { phrasebook })).rejects.toThrow(`${file}: its pair cannot be found: `);
    await expect(readText(file, text, { phrasebook })).rejects.toThrow(message);
  });

  test('does not stop the others', async () => {
    const read = await readTexts({ 'RO1/A/a.log': text, 'RO1/C/b.log': text }, { phrasebook: byPath });
    expect(read.files.map((f) => f.input.file)).toEqual(['RO1/A/a.log']);
    expect(read.failures.map((f) => f.where)).toEqual(['RO1/C/b.log']);
  });

  test('is one stream, whatever stands where units stand', async () => {
    const hosts = Array.from(
      { length: 300 },
      (_, i) => `<30>1 2026-03-14T10:00:00Z h${i} core - - - light steady\n`,
    );
    const read = await readText('RO1/A/x.log', hosts.join(''), { phrasebook: byPath });
    expect(read.streams.map((s) => [s.unit, s.subject.pair, s.subject.half])).toEqual([
      ['RO1 A', 'RO1', 'A'],
    ]);
    expect(read.input.units).toEqual(['RO1 A']);
    expect(read.reasons).toContain('Rows that name no unit are about RO1 A, from the phrasebook.');
  });
});
