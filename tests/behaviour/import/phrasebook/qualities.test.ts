/** A reading whose quality is not good was not observed. */

import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import { readText } from '../../../support/read-text.ts';

const columns = 'time: Time, unit: Unit, parameter: Tag, value: Value, quality: Quality';
const rule = (more = ''): string => `files:\n  - match: "*.csv"\n    columns: { ${columns} }\n${more}`;

/** A poll each minute: the value and quality of each minute's row. */
const poll = (...rows: readonly string[]): string =>
  `Time,Unit,Tag,Value,Quality\n${rows.map((row, i) => `2026-03-14T09:${10 + i}:00Z,RO1-A,light,${row}\n`).join('')}`;

const minute = (text: string): number => Date.parse(`2026-03-14T09:${text}:00Z`);

describe('a reading of bad quality', () => {
  test('is neither a value nor unchanged: a change after it lies after the last good reading', async () => {
    const text = poll('steady,Good', 'steady,good', 'off,Bad', 'off,', 'off,192', 'off,GOOD');
    const { changes, input, notices } = await readText('x.csv', text, { phrasebook: rule() });
    expect(allChanges(changes).map(({ value, earliest, time }) => [value, earliest, time])).toEqual([
      ['steady', minute('10'), minute('10')],
      // The readings of 09:12 and 09:13 are none.
      ['off', minute('11'), minute('14')],
    ]);
    expect(input.rows).toMatchObject({ read: 6, used: 2, unchanged: 2, ignored: 2 });
    expect(notices.map((n) => n.what)).toEqual([
      '2 rows of bad quality, so not observed: "Bad" (1), "" (1).',
    ]);
  });

  test('for long leaves its span unobserved, though rows stand there', async () => {
    const rows = Array.from({ length: 20 }, (_, i) => `steady,${i > 5 && i < 12 ? 'Bad' : 'Good'}`);
    const { streams } = await readText('x.csv', poll(...rows), { phrasebook: rule() });
    expect(streams.flatMap((s) => s.gaps.map((g) => [g.before.time, g.after.time]))).toEqual([
      [minute('15'), minute('22')],
    ]);
  });

  test('is one that good does not list, and nothing else', async () => {
    const text = poll('steady,fine', 'off,Good', 'flashing,1');
    const { changes } = await readText('x.csv', text, { phrasebook: rule('    good: [Fine, 1]\n') });
    expect(allChanges(changes).map((c) => c.value)).toEqual(['steady', 'flashing']);
  });

  test('holds for all of a snapshot', async () => {
    const text =
      'time,unit,role,light,q\n2026-03-14T09:00:00Z,RO1-A,active,off,ok\n2026-03-14T09:01:00Z,RO1-A,standby,steady,bad\n';
    const phrasebook = 'files: [{ match: "*", columns: { quality: q } }]\n';
    const { changes, input } = await readText('x.csv', text, { phrasebook });
    expect(allChanges(changes).map((c) => `${c.signal} ${c.value}`)).toEqual(['role active', 'light off']);
    expect([input.rows.used, input.rows.ignored]).toEqual([1, 1]);
  });

  test('in all rows is a warning, and no change', async () => {
    const { changes, notices } = await readText('x.csv', poll('steady,0', 'off,0'), { phrasebook: rule() });
    expect([changes.length, notices.map((n) => n.id)]).toEqual([0, ['states-not-listed']]);
  });
});

describe('a column of qualities', () => {
  test('that is named and not there is an error in one line', async () => {
    const text = 'Time,Unit,Tag,Value\n2026-03-14T09:00:00Z,RO1-A,light,steady\n';
    await expect(readText('x.csv', text, { phrasebook: rule() })).rejects.toThrow(
      'x.csv: the phrasebook\'s files[0].columns.quality is "Quality", and its header has no such column. Name one of Time, Unit, Tag, Value, or remove the key.',
    );
  });

  test('is what good needs: without one a notice says that it has no effect', async () => {
    const text = 'time,unit,parameter,value\n2026-03-14T09:00:00Z,RO1-A,light,steady\n';
    const { notices } = await readText('x.csv', text, {
      phrasebook: 'files: [{ match: "*", good: [ok] }]\n',
    });
    expect(notices.map((n) => `${n.what} ${n.fix}`)).toEqual([
      "The phrasebook's files[0].good has no effect: as readings the file has no column that is read as quality. Name the column under files[0].columns.quality, or remove good.",
    ]);
  });
});
