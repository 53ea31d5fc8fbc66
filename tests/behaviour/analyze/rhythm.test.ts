import { describe, expect, test } from 'vitest';
import { rhythm } from '../../../src/analyze/rhythm.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';
import { analyseTexts, type TextOptions } from '../../support/read-text.ts';

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
const atHalfPastThree = [0, 1, 3, 4, 5, 9, 10].map((d) => d * 24 * hour + 3.5 * hour);
/** The stamps of half a day between the second and the third bout of those fifty hours apart. */
const unread = Array.from({ length: 12 }, (_, index) => (110 + index) * hour);
const files = (text: string): Readonly<Record<string, string>> => ({ 'ro1.log': text });

/** From the first bout on, at 01:00 of the first day. */
const hours = (spacings: readonly number[]): readonly number[] => spaced(spacings.map((h) => h * hour));

checkAnalyzer(rhythm, {
  reports: [
    {
      // Five spacings of 50 h: no spread at all. The clocks 01:00, 03:00 to 11:00 gather too little: the mean vector is
      // sin 90 / (6 sin 15) = 0.644, p = exp(sqrt(25 + 144 * (1 - 0.644^2)) - 13) = 0.08.
      name: 'six losses, one every fifty hours',
      files: files(journal(hours([50, 50, 50, 50, 50]), 12 * 24 * hour)),
      findings: [
        {
          id: 'rhythm',
          lines: [2, 4, 6, 8, 10, 12],
          figures: { spacings: 5, meanSeconds: 180_000, variation: 0, p: 0, questions: 2 },
        },
      ],
    },
    {
      // Spacings of 50 h give or take a tenth: deviations 5, -5, 5, -5, 0, variance 4 * 25 / 4, coefficient 5 / 50 = 0.1.
      name: 'a rhythm that wavers by a tenth',
      files: files(journal(hours([55, 45, 55, 45, 50]), 12 * 24 * hour)),
      findings: [{ id: 'rhythm', figures: { spacings: 5, meanSeconds: 180_000, variation: 0.1 } }],
    },
    {
      // On eight days, in turn at 02:00, 03:00 and 04:00: no rhythm to the hour, but always in that part of the night.
      // The middle is 23 / 8 = 2.875, and within an hour of it are six of eight, three in four.
      // The spacings 25, 25, 22, 25, 25, 22, 25 h keep a rhythm as well, that of the day.
      name: 'every night between two and four',
      files: files(journal(daily([2, 3, 4, 2, 3, 4, 2, 3].map((h) => h * hour)), 8 * 24 * hour)),
      findings: [
        { id: 'rhythm', figures: { spacings: 7 } },
        { id: 'rhythm', figures: { bouts: 8, within: 6, hours: 2 } },
      ],
    },
    {
      // Days 0, 1, 3, 4, 5, 9 and 10: the spacings of one to four days are no rhythm.
      name: 'at half past three, though not every day',
      files: files(journal(atHalfPastThree, 12 * 24 * hour)),
      findings: [
        { id: 'rhythm', lines: [2, 4, 6, 8, 10, 12, 14], figures: { bouts: 7, within: 7, hours: 1 } },
      ],
    },
  ],
  quiet: [
    {
      // Deviations of a third, 16 of 48 h: a coefficient over 0.25.
      name: 'spacings that waver by a third',
      files: files(journal(hours([64, 32, 64, 32, 64, 32, 64, 32]), 17 * 24 * hour)),
    },
    {
      // A bout can begin no sooner than twelve hours after the one before. Beyond that these wait 0.2 to 4 h, as chance has
      // it; the whole spacings of 12.1 to 16 h vary by a tenth only.
      name: 'bouts that come as soon as they can, one after another',
      files: files(journal(hours([12.2, 13, 15, 12.5, 14, 12.1, 16]), 8 * 24 * hour)),
    },
    {
      name: 'losses spread over the hours of some days',
      files: files(
        journal(
          [1, 33, 113, 125.5, 229, 285, 387, 419].map((h) => h * hour),
          19 * 24 * hour,
        ),
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
    {
      name: 'a rhythm within one bout: two hours apart',
      files: files(journal(hours([2, 2, 2, 2, 2, 2]), 9 * 24 * hour)),
    },
  ],
  notObserved: [
    {
      name: 'readiness is never logged',
      files: files('2026-03-14T10:00:00.000Z RO1 configuration current\n'),
    },
    {
      name: 'five bouts leave four spacings',
      files: files(journal(hours([50, 50, 50, 50]), 10 * 24 * hour)),
    },
    {
      name: 'the hour of the day from less than seven days',
      files: files(
        journal(
          [0, 1, 2, 3, 4, 6].map((d) => d * 24 * hour + 3 * hour),
          6 * 24 * hour + 20 * hour,
        ),
      ),
    },
    {
      // Read from midnight to noon only, sixteen days long: the losses gather where the readings are.
      name: 'the hour of the day where half of each day was not read',
      files: {
        'poll.csv': poll(
          atHalfPastThree,
          600,
          16 * 144,
          Array.from({ length: 16 * 144 }, (_, index) => index * 600).filter((at) => at % 86_400 > 43_200),
        ),
      },
    },
    {
      // Bouts every 20 h seen by a poll every hour: bounds of an eighth of the 8 h beyond the twelve.
      name: 'a rhythm that the poll may have made',
      files: { 'poll.csv': poll(hours([20, 20, 20, 20, 20, 20]), hour, 130) },
    },
    {
      // One of the five spacings is hidden by half a day without a reading, one is left too few.
      name: 'a spacing across an unobserved span does not count',
      files: { 'poll.csv': poll(hours([50, 50, 50, 50, 50]), hour, 288, unread) },
    },
  ],
});

// The other side of the last two cases: bouts further apart, or read without a break.
test.each([
  ['bounds of a thirtieth of the free spacing', poll(hours([44, 44, 44, 44, 44, 44]), hour, 300)],
  ['no unobserved span between', poll(hours([50, 50, 50, 50, 50]), hour, 288)],
])('tells a polled rhythm with %s', async (_, text) => {
  expect(await statementsOf({ 'poll.csv': text })).toEqual([
    expect.stringMatching(
      /^Losses come at regular intervals: a bout every (44 h 00 min|2 days), with [56] spacings/,
    ),
  ]);
});

// Seven equal angles: R = n = 7, p = exp(sqrt(1 + 28) - 15) = exp(-9.615) = 0.0000668, twice that with two questions.
test('says the hour in one plain sentence with its numbers', async () => {
  expect(await statementsOf(files(journal(atHalfPastThree, 12 * 24 * hour)))).toEqual([
    'Losses cluster around 03:30 UTC: 7 of 7 bouts between 03:00 and 04:00 (mean vector 1.00, p = 0.00013, 2 questions asked of all pairs).',
  ]);
});

describe('the site’s day', () => {
  // Lisbon is on UTC until 29 March 2026 01:00 UTC, and an hour ahead from then on: 03:30 there is 02:30 UTC.
  const days = [22, 23, 25, 26, 27, 31, 32].map((day) => day * 24 * hour + 3.5 * hour);
  const local = days.map((at) => (at > 28 * 24 * hour ? at - hour : at));
  const gathered =
    'Losses cluster around 03:30 site time (Europe/Lisbon): 7 of 7 bouts between 03:00 and 04:00 (mean vector 1.00, p = 0.00013, 2 questions asked of all pairs).';
  test('follows daylight saving where the stamps are read in its zone', async () => {
    const printed = journal(days, 34 * 24 * hour).replaceAll('Z RO1', ' RO1');
    expect(await statementsOf(files(printed), { zone: 'Europe/Lisbon' })).toEqual([gathered]);
  });
  test('is that of the zone named beside stamps that say their instant themselves', async () => {
    const text = journal(local, 34 * 24 * hour);
    expect(await statementsOf(files(text), { zone: 'Europe/Lisbon' })).toEqual([gathered]);
    expect(await statementsOf(files(text))).toEqual([
      expect.stringMatching(/^Losses cluster around 03:13 UTC: 7 of 7 bouts between 02:13 and 04:13/),
    ]);
  });
});

async function statementsOf(
  told: Readonly<Record<string, string>>,
  options: TextOptions = {},
): Promise<readonly string[]> {
  const { findings } = await analyseTexts(told, options);
  return findings.flatMap((f) => (f.id === 'rhythm' ? [f.statement] : []));
}
