/**
 * Shapes that are read without a phrasebook, each with what is said of it and the timeline that comes of it.
 *
 * service-journal.jsonl: the fields and their form (microseconds as a text, bytes as an array of numbers, `null` for what was
 * left out for its size) are those of the page "Journal Export Formats", section "Journal JSON Format",
 * https://systemd.io/JOURNAL_EXPORT_FORMATS/, and "systemd.journal-fields". structured-data.log: RFC 5424 (2009), section 6.3.
 */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText, type TextOptions } from '../../../support/read-text.ts';

/** Read in both lanes and two chunk sizes, which must say the same. */
async function read(name: string, options: TextOptions = {}): Promise<ImportedFile> {
  const bytes = readFileSync(join('tests', 'fixtures', 'shapes', name));
  const file = await readText(name, bytes, options);
  for (const chunk of [7, 65_536])
    expect(await readText(name, bytes, { ...options, chunk, isGeneralOnly: true })).toEqual(file);
  return file;
}

const said = ({ changes }: ImportedFile): readonly string[] =>
  allChanges(changes).map(({ time, subject: { pair, half }, signal, value, line }) =>
    [new Date(time).toISOString().slice(11, 21), `${pair}${half ?? ''}`, signal, value, line].join(' '),
  );

interface Shape extends TextOptions {
  readonly file: string;
  /** The first reason. */
  readonly because: string;
  readonly changes: readonly string[];
  readonly units: readonly string[];
}

const atWhat = 'Correct it under files in a phrasebook if that is wrong.';
const leading = 'Read as lines: its lines are a leading timestamp, a unit and a message.';
const two = ['10:00:00.0 RO1A role active 1', '10:00:01.0 RO1B role standby 2'];
const both = ['RO1-A', 'RO1-B'];

const shapes: readonly Shape[] = [
  {
    file: 'service-journal.jsonl',
    because: "Read as lines: its lines are JSON lines of a service manager's journal.",
    // The second message is the bytes of "partner ready"; the third entry has a field of its own.
    changes: [
      '10:00:00.0 RO1A role active 1',
      '10:00:01.5 RO1 partner-ready yes 2',
      '10:00:02.0 RO1B light steady 3',
    ],
    units: both,
  },
  {
    file: 'alarm-list.csv',
    because: `Read as journal: its header names no known column; by their contents these were taken: "Time" as the time, "Source" as the unit, "Condition" as the message, "State" as the state. ${atWhat}`,
    // Row 3 is the condition of row 2, acknowledged: an entry again, and no other state.
    changes: [
      '10:00:00.0 RO1A supply fault 2',
      '10:05:00.0 RO1A supply fault 3',
      '10:06:00.0 RO1A supply good 4',
      '10:07:00.0 RO1 partner-ready no 5',
      '10:08:00.0 RO1 partner-ready yes 6',
    ],
    units: ['RO1-A', 'RO1'],
  },
  {
    file: 'wide.csv',
    because:
      'Read as wide: its header names units and parameters: Role of RO1-A, Role of RO1-B, partner ready of RO1.',
    changes: [
      '10:00:00.0 RO1A role active 2',
      '10:00:00.0 RO1B role standby 2',
      '10:00:00.0 RO1 partner-ready yes 2',
      '10:00:10.0 RO1 partner-ready no 3',
    ],
    units: ['RO1-A', 'RO1-B', 'RO1'],
  },
  {
    file: 'wide-with-quality.csv',
    because: 'Read as wide: its header names units and parameters: partner ready of RO1_A, light of RO1_A.',
    // At 10:00:10 the quality of "no" is bad: it was not read.
    changes: [
      '10:00:00.0 RO1 partner-ready yes 2',
      '10:00:00.0 RO1A light steady 2',
      '10:00:10.0 RO1A light off 3',
      '10:00:20.0 RO1 partner-ready no 4',
    ],
    units: ['RO1_A'],
  },
  {
    file: 'tall-tags.csv',
    because: `Read as readings: its header names no known column; by their contents these were taken: "Time" as the time, "Tag" as the parameter, "Value" as the value. ${atWhat}`,
    changes: [
      '10:00:00.0 RO1A role active 2',
      '10:00:00.0 RO1B role standby 3',
      '10:00:10.0 RO1A role standby 4',
    ],
    units: both,
  },
  {
    file: 'declared-delimiter.csv',
    because: 'Read as journal: its header has columns for time, unit, message.',
    changes: ['10:00:00.0 RO1A light steady 3'],
    units: ['RO1-A'],
  },
  {
    file: 'other-locale.csv',
    because: `Read as snapshots: its header names no known column; by their contents these were taken: "Datum" as the date, "Uhrzeit" as the clock, "Gerät" as the unit. ${atWhat}`,
    changes: ['10:00:00.0 RO1A light off 2', '10:00:20.0 RO1A light steady 4'],
    units: ['RO1-A'],
  },
  {
    file: 'unnamed-columns.csv',
    because: 'Read as journal: its header has columns for time, unit, message.',
    // Of a message of two lines the first says what happened.
    changes: ['10:00:00.0 RO1A light steady 2', '10:00:05.0 RO1A light flashing 3'],
    units: ['RO1-A'],
  },
  ...(['clock-after-unit.csv', 'clock-before-date.csv'] as const).map((file) => ({
    file,
    because: `Read as journal: its header names no known column; by their contents these were taken: "Logged" as the date, "At" as the clock, "Where" as the unit, "What" as the message. ${atWhat}`,
    changes: [
      '10:00:00.0 RO1A light steady 2',
      '10:00:10.0 RO1A light off 3',
      '10:00:20.0 RO1B light steady 4',
      '10:00:30.0 RO1B light off 5',
    ],
    units: both,
  })),
  {
    file: 'clock-under-any-name.csv',
    because:
      'Read as journal: its header has columns for time, unit, message; by their contents "Date" was taken as the date and "Hour mark" as the clock.',
    changes: [
      '10:00:00.0 RO1A light steady 2',
      '10:00:10.0 RO1A light off 3',
      '10:00:20.0 RO1B light steady 4',
    ],
    units: both,
  },
  {
    file: 'tags-of-programs.log',
    because: 'Read as lines: its lines are RFC 3164.',
    year: 2026,
    changes: [
      '10:00:00.0 RO1A role active 1',
      '10:00:01.0 RO1B light steady 2',
      '10:00:02.0 RO1 partner-ready yes 3',
    ],
    units: ['RO1-A', 'RO1-B', 'RO1'],
  },
  {
    file: 'structured-data.log',
    because: 'Read as lines: its lines are RFC 5424.',
    // Each line tells one thing twice: in its message and in its data.
    changes: [
      '10:00:00.1 RO1A role active 1',
      '10:00:00.1 RO1A role active 1',
      '10:00:00.1 RO1A light steady 1',
      '10:00:01.1 RO1B light steady 2',
      '10:00:01.1 RO1B light steady 2',
    ],
    units: both,
  },
  {
    file: 'flags.log',
    because: 'Read as lines: its lines are key=value.',
    changes: ['10:00:00.0 RO1A role active 1'],
    units: both,
  },
  { file: 'threads.log', because: leading, changes: two, units: both },
  { file: 'stamps-in-brackets.log', because: leading, changes: two, units: both },
  ...['severity-letters.log', 'pipes.log', 'tabs.log'].map((file) => ({
    file,
    because: leading,
    changes: [...two, '10:00:02.0 RO1 partner-ready yes 3'],
    units: [...both, 'RO1'],
  })),
];

describe('without a phrasebook', () => {
  test.each(shapes)('$file is read', async ({ file, because, changes, units, ...options }) => {
    const found = await read(file, options);
    expect(found.reasons[0]).toBe(because);
    // The same entry again within its state changes nothing, and stands in the list all the same.
    expect(said(found)).toEqual(changes);
    expect(found.input.units).toEqual(units);
    const { read: all, ...counts } = found.input.rows;
    expect(Object.values(counts).reduce((a, b) => a + b, 0)).toBe(all);
  });

  test('what is no structured data is refused with what is wrong of it', async () => {
    const found = await read('structured-data.log');
    const [notice] = found.notices.filter((n) => n.id === 'rejected-rows');
    expect(notice?.what).toContain(
      '"light off" is no parameter of the form name="value" (RFC 5424, section 6.3)',
    );
  });

  test('a text without units is read, names no pair, and says what is missing', async () => {
    const found = await read('no-unit.log');
    expect([found.input.rows.unmatched, said(found), found.input.unmatched[0]?.wording]).toEqual([
      3,
      [],
      'no unit is named',
    ]);
    expect(`${found.notices[0]?.what} ${found.notices[0]?.fix}`).toContain(
      'Name the place of the unit in the phrasebook: files: [{ match: "no-unit.log", unit: RO1-A }].',
    );
  });

  test('a clock beside a date that the phrasebook alone names as the time is refused', async () => {
    const phrasebook = 'files: [{ match: "*.csv", columns: { time: Logged, unit: Where, message: What } }]\n';
    await expect(read('clock-after-unit.csv', { phrasebook })).rejects.toThrow(
      'column "At" the clocks, such as "10:00:00". Write in the phrasebook files: [{ match: "*.csv", columns: { date: "Logged", clock: "At" } }].',
    );
  });
});
