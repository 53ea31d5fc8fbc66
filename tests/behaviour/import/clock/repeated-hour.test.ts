import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText } from '../../../support/read-text.ts';

// In Lisbon the clocks go back from 02:00 to 01:00 on 25 October 2026 at 01:00 UTC (IANA tzdata, rule EU): 01:30 is
// 00:30 UTC or 01:30 UTC.
const zone = 'Europe/Lisbon';

/** A journal of losses and recoveries at the given clocks. */
async function journal(...clocks: readonly string[]): Promise<ImportedFile> {
  const rows = clocks.map(
    (clock, index) => `2026-10-25 ${clock},RO1,partner ${index % 2 ? '' : 'not '}ready`,
  );
  return readText('journal.csv', `${['time,unit,message', ...rows].join('\n')}\n`, { zone });
}

/** A poll every ten minutes from one clock to another, as printed; each reading differs from the one before. */
async function poll(...clocks: readonly string[]): Promise<ImportedFile> {
  const rows = clocks.map(
    (clock, index) => `2026-10-25 ${clock},RO1,partner ready,${index % 2 ? 'no' : 'yes'}`,
  );
  return readText('poll.csv', `${['time,unit,parameter,value', ...rows].join('\n')}\n`, { zone });
}

const instants = (file: ImportedFile): readonly string[] =>
  allChanges(file.changes).map(({ earliest, time }) =>
    [...new Set([earliest, time])].map(clockOf).join(' to '),
  );
const clockOf = (time: number): string => new Date(time).toISOString().slice(11, 19);
const fold = (file: ImportedFile): string | undefined =>
  file.notices.find((n) => n.id === 'clock-fold')?.what;

describe('the hour that the clocks repeat', () => {
  test('is settled by rows that go back into it', async () => {
    const file = await journal('00:50:00', '01:10:00', '01:50:00', '01:05:00', '02:10:00');
    expect(instants(file)).toEqual(['23:50:00', '00:10:00', '00:50:00', '01:05:00', '02:10:00']);
    expect(fold(file)).toBe(
      '3 timestamps in the hour repeated when clocks go back; the order of the rows decided which.',
    );
  });

  test('is not jumped into by a row that is a little behind its neighbour', async () => {
    const file = await journal('00:50:00', '01:10:05', '01:10:04', '01:50:00', '01:05:00', '02:10:00');
    expect(instants(file).slice(0, 4)).toEqual(['23:50:00', '00:10:05', '00:10:04', '00:50:00']);
  });

  test('becomes the bounds of an entry where nothing settles it', async () => {
    const file = await journal('00:50:00', '01:30:00', '02:10:00');
    expect(instants(file)).toEqual(['23:50:00', '00:30:00 to 01:30:00', '02:10:00']);
    expect(fold(file)).toContain(
      'One timestamp in the hour repeated when clocks go back; the order of the rows does not',
    );
  });

  test('is the earlier one for a poll that goes on into it', async () => {
    const file = await poll('00:40:00', '00:50:00', '01:00:00', '01:10:00', '01:20:00');
    expect(instants(file).slice(2)).toEqual([
      '23:50:00 to 00:00:00',
      '00:00:00 to 00:10:00',
      '00:10:00 to 00:20:00',
    ]);
  });

  test('is the later one for a poll that begins in it and goes on after it', async () => {
    const file = await poll('01:40:00', '01:50:00', '02:00:00', '02:10:00');
    expect(instants(file)).toEqual([
      '01:40:00',
      '01:40:00 to 01:50:00',
      '01:50:00 to 02:00:00',
      '02:00:00 to 02:10:00',
    ]);
  });

  test('becomes the bounds of what a poll that touches neither end saw', async () => {
    const file = await poll('01:20:00', '01:30:00', '01:40:00');
    expect(instants(file).slice(1)).toEqual(['00:20:00 to 01:30:00', '00:30:00 to 01:40:00']);
  });
});

test('the hour that the clocks leave out is reported', async () => {
  // On 29 March 2026 the clock goes from 01:00 to 02:00.
  const file = await readText('journal.csv', 'time,unit,message\n2026-03-29 01:30:00,RO1,partner ready\n', {
    zone,
  });
  expect(fold(file)).toBe('One timestamp in the hour skipped when clocks go forward.');
});
