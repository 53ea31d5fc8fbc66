import { describe, expect, test } from 'vitest';
import { readPhrasebook, tryColumns } from '../../../../src/pipeline.ts';
import { sourceOf } from '../../../support/read-text.ts';

const try_ = (text: string, rule = '{}') =>
  tryColumns(
    sourceOf('x.csv', text),
    readPhrasebook('p.yaml', `files: [{ match: x.csv, ${rule.slice(1, -1)} }]`),
    2026,
  );

describe('the first rows of a table', () => {
  const text = [
    'a report of the day',
    'Moment;Seat;Tale',
    '14.03.2026 09:00:00;RO1-A;light steady',
    '31.02.2026 09:00:00;RO1-A;mirror broken',
    '14.03.2026 09:02:00;RO1-B;mirror broken',
  ].join('\n');

  test('are read by the columns that were named, with what is not recognised', async () => {
    const table = await try_(text, '{ columns: { time: Moment, unit: Seat, message: Tale } }');
    expect(table).toMatchObject({
      names: ['Moment', 'Seat', 'Tale'],
      keys: ['time', 'unit', 'message'],
      examples: ['14.03.2026 09:00:00', 'RO1-A', 'light steady'],
      headerLine: 2,
      missing: [],
    });
    expect(table?.rows).toEqual([
      {
        line: 3,
        time: Date.UTC(2026, 2, 14, 9),
        unit: 'RO1-A',
        pair: 'RO1',
        half: 'A',
        says: [{ text: 'light steady', means: 'light steady' }],
        more: 0,
        problem: null,
      },
      {
        line: 4,
        time: null,
        unit: '',
        pair: null,
        half: null,
        says: [],
        more: 0,
        problem: '"31.02.2026 09:00:00" is not a date that exists.',
      },
      expect.objectContaining({ line: 5, half: 'B', says: [{ text: 'mirror broken', means: null }] }),
    ]);
  });

  test('of dates that can be read both ways say so', async () => {
    const open = `time,unit,message\n${'03/04/2026 09:00:00,RO1-A,light steady\n'.repeat(3)}`;
    expect((await try_(open))?.rows[0]?.problem).toBe(
      '"03/04/2026 09:00:00" may be day-first or month-first.',
    );
  });

  test('are not read while a column is missing, and what is missing is told', async () => {
    expect(await try_(text)).toMatchObject({ missing: ['time', 'unit'], rows: [] });
    expect(await try_(text, '{ columns: { time: Moment, parameter: Seat }, unit: RO1-A }')).toMatchObject({
      missing: ['value'],
      unit: 'RO1-A',
    });
  });

  test('are all parameters of their names where nothing else is chosen; four are told and the rest counted', async () => {
    const wide = `Moment,unit,light,a,b,c,d\n${'2026-03-14T09:00:00Z,RO1-A,steady,1,2,3,4\n'.repeat(2)}`;
    const table = await try_(wide, '{ columns: { time: Moment } }');
    expect(table?.rows[0]).toMatchObject({ more: 1 });
    expect(table?.rows[0]?.says.slice(0, 2)).toEqual([
      { text: 'light = steady', means: 'light steady' },
      { text: 'a = 1', means: null },
    ]);
  });

  test('columns without a name of their own have a number, and a table without a header has numbers alone', async () => {
    const twice = `time,note,note,\n${'2026-03-14T09:00:00Z,a,b,c\n'.repeat(2)}`;
    expect((await try_(twice))?.names).toEqual(['time', '#2', '#3', '#4']);
    const bare = '2026-03-14T09:00:00Z,RO1-A,light steady\n'.repeat(3);
    const table = await try_(bare, '{ columns: { time: "#1", unit: "#2", message: "#3" } }');
    expect(table).toMatchObject({ names: ['#1', '#2', '#3'], headerLine: 0 });
    expect(table?.rows[0]).toMatchObject({ line: 1, half: 'A' });
  });

  test('of a text or a picture there are none', async () => {
    expect(await try_('once upon a time\nthere was a pump\n')).toBeNull();
    expect(await try_('\u0000\u0001\u0002\u0000')).toBeNull();
  });
});
