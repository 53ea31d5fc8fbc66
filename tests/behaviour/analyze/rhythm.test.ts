import { expect, test } from 'vitest';
import { defaultLimits } from '../../../src/analyze/limits.ts';
import { rhythm } from '../../../src/analyze/rhythm.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';
import { analyseTexts } from '../../support/read-text.ts';

const start = Date.UTC(2026, 2, 1);
const hour = 3600;

/** A journal from 1 March 2026 00:00 UTC on: losses so many seconds after that, each for 30 s, and its last line. */
function journal(losses: readonly number[], endSeconds: number): string {
  const line = (seconds: number, text: string): string =>
    `${new Date(start + seconds * 1000).toISOString()} RO1 ${text}\n`;
  return [
    line(0, 'partner ready'),
    ...losses.flatMap((s) => [line(s, 'partner not ready'), line(s + 30, 'partner ready')]),
    line(endSeconds, 'configuration current'),
  ].join('');
}

/** A poll of readiness: the losses are seen at the first row at or after them. */
function poll(
  losses: readonly number[],
  spacing: number,
  rows: number,
  unread: readonly number[] = [],
): string {
  const lines = Array.from({ length: rows }, (_, index) => index * spacing)
    .filter((at) => !unread.includes(at))
    .map((at) => {
      const lost = losses.some((s) => s <= at && at < s + spacing);
      return `${new Date(start + at * 1000).toISOString()},RO1,${lost ? 'no' : 'yes'}`;
    });
  return `time,unit,partner ready\n${lines.join('\n')}\n`;
}

/** Losses so far apart, the first an hour after the start. */
function spaced(spacings: readonly number[]): readonly number[] {
  const losses = [hour];
  for (const spacing of spacings) losses.push((losses.at(-1) ?? hour) + spacing);
  return losses;
}
const daily = (clocks: readonly number[]): readonly number[] =>
  clocks.map((seconds, day) => day * 24 * hour + seconds);
const files = (text: string): Readonly<Record<string, string>> => ({ 'ro1.log': text });

checkAnalyzer(rhythm, {
  reports: [
    {
      // Five spacings of 7200 s: no spread at all.
      name: 'six losses, one every two hours',
      files: files(journal(spaced([7200, 7200, 7200, 7200, 7200]), 20 * hour)),
      findings: [
        {
          id: 'rhythm',
          lines: [2, 4, 6, 8, 10, 12],
          figures: { spacings: 5, meanSeconds: 7200, variation: 0, p: 0 },
        },
      ],
    },
    {
      // Spacings of 7200 s give or take a tenth: deviations 720, -720, 720, -720, 0, variance 4 * 720^2 / 4,
      // coefficient 720 / 7200 = 0.1.
      name: 'a rhythm that wavers by a tenth',
      files: files(journal(spaced([7920, 6480, 7920, 6480, 7200]), 20 * hour)),
      findings: [{ id: 'rhythm', figures: { spacings: 5, meanSeconds: 7200, variation: 0.1 } }],
    },
    {
      // On eight days, in turn at 02:00, 03:00 and 04:00: no rhythm to the hour, but always in that part of the night.
      // The spacings 25, 25, 22, 25, 25, 22, 25 h keep a rhythm as well, that of the day.
      name: 'every night between two and four',
      files: files(journal(daily([2, 3, 4, 2, 3, 4, 2, 3].map((h) => h * hour)), 8 * 24 * hour)),
      findings: [
        { id: 'rhythm', figures: { spacings: 7 } },
        { id: 'rhythm', figures: { bouts: 8 } },
      ],
    },
    {
      // Days 0, 1, 3, 4, 5, 9 and 10: the spacings of one to four days are no rhythm.
      name: 'at half past three, though not every day',
      files: files(
        journal(
          [0, 1, 3, 4, 5, 9, 10].map((d) => d * 24 * hour + 3.5 * hour),
          12 * 24 * hour,
        ),
      ),
      findings: [{ id: 'rhythm', lines: [2, 4, 6, 8, 10, 12, 14], figures: { bouts: 7 } }],
    },
  ],
  quiet: [
    {
      // Alternating 7200 s give or take a third: coefficient over 0.25.
      name: 'spacings that waver by a third',
      files: files(journal(spaced([9600, 4800, 9600, 4800, 9600, 4800, 9600, 4800]), 24 * hour)),
    },
    {
      name: 'losses spread over the hours of many days',
      files: files(
        journal(daily([1, 9, 17, 5, 13, 21, 3, 11].map((h) => h * hour + (h % 5) * 900)), 9 * 24 * hour),
      ),
    },
    {
      // Six in one night, then none for eight days: one bad night is one bout.
      name: 'many losses in one night',
      files: files(
        journal(
          [0, 600, 2400, 2700, 5400, 7000].map((s) => 3 * hour + s),
          9 * 24 * hour,
        ),
      ),
    },
  ],
  notObserved: [
    {
      name: 'readiness is never logged',
      files: files('2026-03-14T10:00:00.000Z RO1 configuration current\n'),
    },
    {
      name: 'five losses leave four spacings',
      files: files(journal(spaced([7200, 7200, 7200, 7200]), 20 * hour)),
    },
    {
      name: 'the hour of the day from less than seven days',
      files: files(
        journal(
          [0, 1, 1.5, 3, 4, 6].map((d) => d * 24 * hour + 3 * hour),
          6 * 24 * hour + 20 * hour,
        ),
      ),
    },
    {
      // Read from midnight to noon only, sixteen days long: the losses gather where the readings are.
      name: 'the hour of the day where half of each day was not read',
      files: {
        'poll.csv': poll(
          [0, 1, 3, 4, 5, 9, 10].map((d) => d * 24 * hour + 3.5 * hour),
          600,
          16 * 144,
          Array.from({ length: 16 * 144 }, (_, index) => index * 600).filter((at) => at % 86_400 > 43_200),
        ),
      },
    },
    {
      // Losses every 50 s seen by a poll every 10 s: bounds of a fifth of the spacing.
      name: 'a rhythm that the poll may have made',
      files: { 'poll.csv': poll([100, 150, 200, 250, 300, 350, 400], 10, 60) },
    },
    {
      // One of the six spacings is hidden by an hour without a reading, one is left too few.
      name: 'a spacing across an unobserved span does not count',
      files: {
        'poll.csv': poll(
          [600, 1200, 1800, 2400, 3000, 3600],
          10,
          400,
          Array.from({ length: 5 }, (_, index) => 2000 + index * 10),
        ),
      },
    },
  ],
});

// The other side of the last two cases: the same losses, further apart or read without a break.
test.each([
  ['bounds of a twentieth of the spacing', poll([200, 400, 600, 800, 1000, 1200, 1400], 10, 160)],
  ['no unobserved span between', poll([600, 1200, 1800, 2400, 3000, 3600], 10, 400)],
])('tells a polled rhythm with %s', async (_, text) => {
  const { facts } = await analyseTexts({ 'poll.csv': text });
  const found = facts.flatMap((f) => rhythm.analyze(f, defaultLimits).findings.map((x) => x.id));
  expect(found).toEqual(['rhythm']);
});

test('says the hour in one plain sentence with its numbers', async () => {
  const losses = [0, 1, 3, 4, 5, 9, 10].map((d) => d * 24 * hour + 3.5 * hour);
  const { facts } = await analyseTexts(files(journal(losses, 12 * 24 * hour)));
  const said = facts.flatMap((f) => rhythm.analyze(f, defaultLimits).findings.map((x) => x.statement));
  // Seven equal angles: R = n = 7, p = exp(sqrt(1 + 28) - 15) = exp(-9.615) = 0.000067.
  expect(said).toEqual([
    'The losses gather at an hour of the day: 7 bouts of them, over 12 h 00 min apart, about 03:30 UTC (mean vector 1.00 of 1, p < 0.0001).',
  ]);
});
