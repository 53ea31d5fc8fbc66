import { describe, expect, test } from 'vitest';
import { journal } from '../../../../src/import/layouts/journal.ts';
import { checkImporter } from '../../../support/check-importer.ts';
import { readText } from '../../../support/read-text.ts';

const day = '2026-11-02';

checkImporter(journal, [
  {
    name: 'a row per condition, with when it began and when it ended',
    file: 'alarms.csv',
    text: `Time,Cleared,Unit,Message\n${day} 08:00:00Z,${day} 08:04:00Z,RO1-B,partner not ready\n${day} 08:02:00Z,${day} 08:30:00Z,RO1-B,link a down\n${day} 09:05:00Z,,RO1-B,partner not ready\n`,
    changes: [
      '08:00:00.000 RO1 pair partner-ready no line 2',
      '08:04:00.000 RO1 pair partner-ready yes line 2',
      '08:02:00.000 RO1 B link-a down line 3',
      '08:30:00.000 RO1 B link-a up line 3',
      '09:05:00.000 RO1 pair partner-ready no line 4',
    ],
    rows: { read: 3, used: 3 },
  },
  {
    name: 'a state beside it is that of now, not that of its begin',
    file: 'alarms.csv',
    text: `Time,Ended,Unit,Message,State\n${day} 08:00:00Z,${day} 08:04:00Z,RO1,partner not ready,Cleared\n${day} 09:05:00Z,-,RO1,partner not ready,Active\n`,
    changes: [
      '08:00:00.000 RO1 pair partner-ready no line 2',
      '08:04:00.000 RO1 pair partner-ready yes line 2',
      '09:05:00.000 RO1 pair partner-ready no line 3',
    ],
  },
  {
    name: 'what happened does not happen again where it ends',
    file: 'alarms.csv',
    text: `Time,RTN,Unit,Message\n${day} 08:00:00Z,${day} 08:04:00Z,RO1-B,module removed\n`,
    changes: ['08:00:00.000 RO1 B removed - line 2'],
  },
  {
    name: 'the column may be named by a rule',
    file: 'alarms.csv',
    text: `Kommt,Geht,Unit,Message\n${day} 08:00:00Z,${day} 08:04:00Z,RO1,partner not ready\n`,
    phrasebook: 'files: [{ match: "*", columns: { time: Kommt, ended: Geht } }]\n',
    changes: [
      '08:00:00.000 RO1 pair partner-ready no line 2',
      '08:04:00.000 RO1 pair partner-ready yes line 2',
    ],
  },
]);

/** Why a row that ended so is not read, by the site's own rule as by plain English; undefined where it is. */
async function refused(ended: string, state = ''): Promise<string | undefined> {
  const text = `time,cleared,unit,message,alarm state\n${day} 08:00:00Z,${ended},RO1,partner not ready,${state}\n${day} 09:00:00Z,,RO1-A,link a up,\n`;
  const phrasebook = 'messages: [{ when: "partner not ready", signal: partner-ready, value: no }]\n';
  const [plain, own] = [
    await readText('alarms.csv', text),
    await readText('alarms.csv', text, { phrasebook }),
  ];
  expect(own.notices).toEqual(plain.notices);
  expect(plain.changes.length + plain.input.rows.rejected).toBe(2);
  return plain.notices.find(({ id }) => id === 'rejected-rows')?.what;
}

describe('a condition of which nobody can say until when it stood is not read', () => {
  test.each([
    `${day} 07:59:59Z`,
    'soon',
    'yes',
    // Clocks go back from 02:00 to 01:00 in Lisbon on that day.
    '2027-10-31 01:30:00 Europe/Lisbon',
  ])('%s', async (ended) => {
    expect(await refused(ended)).toContain(
      `Column "cleared" says "${ended}", which is not one instant after`,
    );
  });
  test('nor is one that ended, and no stamp says when', async () => {
    expect(await refused('', 'cleared')).toContain(
      'no longer stands ("cleared"), and column "cleared" does not say',
    );
    expect(await refused('', 'active')).toBeUndefined();
    expect(await refused('no')).toBeUndefined();
  });
  test('in a line of fields, where the end is not read', async () => {
    const row = { time: `${day}T08:00:00Z`, unit: 'RO1', event: 'partner not ready' };
    const read = async (more: object): Promise<number> =>
      (await readText('alarms.jsonl', `${JSON.stringify({ ...row, ...more })}\n`)).changes.length;
    expect(await read({ cleared: `${day}T08:04:00Z` })).toBe(0);
    expect(await read({ cleared: '' })).toBe(1);
  });
});

test('the stamps of the ends follow each other by themselves over New Year', async () => {
  const rows = ['31 Dec 23:50:00,1 Jan 00:10:00', '1 Jan 00:20:00,1 Jan 00:30:00'];
  const text = `time,ended,unit,message\n${rows.map((r) => `${r},RO1,partner not ready`).join('\n')}\n`;
  const { changes } = await readText('alarms.csv', text, { year: 2026 });
  expect([...changes.time].map((time) => new Date(time).toISOString())).toEqual([
    '2026-12-31T23:50:00.000Z',
    '2027-01-01T00:10:00.000Z',
    '2027-01-01T00:20:00.000Z',
    '2027-01-01T00:30:00.000Z',
  ]);
});
