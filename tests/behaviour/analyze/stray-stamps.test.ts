/** Stamps of a file that lie far from all others in it, by a gap of half a year and ten times the span of the others. */
import { describe, expect, test } from 'vitest';
import { fileFigures } from '../../../src/analyze/file-figures.ts';
import { strayStamps } from '../../../src/analyze/stray-stamps.ts';
import { readTexts } from '../../support/read-text.ts';

const entry = (stamp: string, index = 0): string =>
  `${stamp}T09:00:00Z RO1-A ${index % 2 === 0 ? 'restart' : 'light steady'}\n`;
/** Twelve entries of 1 to 12 March 2026: eleven days. */
const march = Array.from({ length: 12 }, (_, day) =>
  entry(`2026-03-${String(day + 1).padStart(2, '0')}`, day),
).join('');

async function found(text: string): Promise<readonly unknown[]> {
  const { files } = await readTexts({ 'a.log': text });
  return strayStamps(fileFigures(files)).map((f) => [f.statement, f.severity, f.evidence.map((e) => e.line)]);
}

describe('a stamp far from all others in its file', () => {
  test('is told of with its line, its date and what the others span', async () => {
    // From 6 March 2025 to 1 March 2026 it is 360 d.
    expect(await found(march + entry('2025-03-06', 1))).toEqual([
      [
        'One timestamp is 360 days or more from all others of a.log (2026-03-01 to 2026-03-12): 2025-03-06 in line 13. They were used as printed: correct the rows if the date is wrong.',
        'info',
        [13],
      ],
    ]);
  });
  test('may lie at both ends, and be several', async () => {
    const strays = entry('2025-03-06', 1) + entry('2027-03-06', 1) + entry('2027-03-07', 1);
    expect(await found(march + strays)).toEqual([
      [expect.stringMatching(/^3 timestamps are /), 'info', [13, 14, 15]],
    ]);
  });
  test.each([
    ['the gap is under half a year', march + entry('2025-10-01', 1)],
    ['there are too few others', `${march.split('\n').slice(0, 9).join('\n')}\n${entry('2025-03-06', 1)}`],
    [
      'there are more of them than slips',
      march + [3, 4, 5, 6].map((d) => entry(`2025-03-0${d}`, d)).join(''),
    ],
    ['they lie more than ten years off, which is told of elsewhere', march + entry('1970-01-01', 1)],
    [
      'the log itself is long: 310 d, and a gap of less than ten times that',
      march + entry('2026-06-20', 1) + entry('2026-09-20') + entry('2027-01-05', 1) + entry('2028-01-05'),
    ],
  ])('is none where %s', async (_, text) => expect(await found(text)).toEqual([]));
});
