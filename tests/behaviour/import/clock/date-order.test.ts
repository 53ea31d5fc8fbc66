/** Which of two numbers is the day: settled by the dates of the whole file, or by files named alike, and then said. */
import { describe, expect, test } from 'vitest';
import { orderEvidence } from '../../../../src/import/clock/date-order.ts';
import { readTexts } from '../../../support/read-text.ts';

const header = 'Time,Unit,Message\n';
const row = (stamp: string): string => `${stamp},RO1-A,partner ready\n`;

describe('the dates of a file', () => {
  const settledBy = (...texts: string[]): string | undefined => {
    const evidence = orderEvidence();
    texts.forEach((text, index) => {
      evidence.add(text, index + 1);
    });
    return evidence.settled()?.order ?? (evidence.isOpen() ? 'open' : undefined);
  };
  test.each([
    [['03/03/2026', '03/04/2026', '13/04/2026'], 'day-first'],
    [['03/03/2026', '03/04/2026'], 'open'],
    [['03/03/2026'], undefined],
    [['03.04.26 09:14', '04.14.26 09:14'], 'month-first'],
    [['[13/04/2026 09:14] RO1'], 'day-first'],
    [['INFO 13/04/2026 09:14 RO1'], 'day-first'],
    [['Mon 13/04/2026 09:14'], 'day-first'],
    [['unit=RO1-A time="13/04/2026 09:14"'], 'day-first'],
    [['{"unit":"RO1-A","time":"03/04/2026 09:14"}'], 'open'],
    [['09:14:05 13/04/2026 RO1'], 'day-first'],
    [['14. 3. 2026 9:14'], 'day-first'],
    [['2026-03-14 09:14 RO1-A configuration of 03/04/2026 loaded'], undefined],
    [['Release 6.4.10'], undefined],
    [['10.4.6.26 answers'], undefined],
  ])('%j', (texts, expected) => expect(settledBy(...texts)).toBe(expected));

  test('a day that is also its month does not hide a decisive date far behind it', async () => {
    const many = row('05/05/2026 09:14').repeat(3000);
    const { files } = await readTexts({
      'ro1.csv': header + many + row('06/05/2026 09:14') + row('13/05/2026 09:14'),
    });
    // The last row: 13 May, day first.
    expect(files[0]?.input.to).toBe(Date.UTC(2026, 4, 13, 9, 14));
    expect(files[0]?.input.rows.rejected).toBe(0);
  });
});

describe('a file whose own dates settle nothing', () => {
  const open = header + row('03/04/2026 09:14') + row('04/04/2026 09:14');
  test('is read as files named alike settle it, which is said', async () => {
    const other = header + row('13/03/2026 09:14');
    const { files, failures } = await readTexts({ 'ro1-03.csv': other, 'ro1-04.csv': open });
    expect(failures).toEqual([]);
    expect(files[1]?.input.from).toBe(Date.UTC(2026, 3, 3, 9, 14));
    expect(files[1]?.notices.map(({ id, what, lines }) => [id, what, lines[0].line])).toContainEqual([
      'date-order',
      '"03/04/2026" and its other dates can be read day-first or month-first: no date in the file decides; ro1-03.csv, which has a similar name, is day-first, and it was read so.',
      2,
    ]);
  });
  test.each([
    ['the others have another name', { 'ro2-03.log.csv': header + row('13/03/2026 09:14') }],
    [
      'the others differ',
      { 'ro1-03.csv': header + row('13/03/2026 09:14'), 'ro1-02.csv': header + row('02/13/2026 09:14') },
    ],
  ])('is left out where %s', async (_, others) => {
    const { failures } = await readTexts({ ...others, 'ro1-04.csv': open });
    expect(failures.map(({ where, kind }) => [where, kind])).toEqual([['ro1-04.csv:2', 'date-order']]);
  });
});
