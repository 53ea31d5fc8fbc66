/** Changes of one moment are one sighting of the clocks, however many they are. */
import { expect, test } from 'vitest';
import { clockOffsets } from '../../../src/timeline/clock-offsets.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { journalText, readTexts } from '../../support/read-text.ts';

async function aheads(files: Readonly<Record<string, string>>): Promise<readonly (number | null)[]> {
  return clockOffsets((await readTexts(files)).files, null, defaultRules).map(({ ahead }) => ahead);
}

const around = (clock: string): string =>
  [
    '09:00:00 RO8 A role active',
    ...[
      'RO1 switchover',
      'RO1 A role standby',
      'RO1 B role active',
      'RO1 A light steady',
      'RO1 B light off',
    ].map((message) => `${clock} ${message}`),
  ].join('\n');
const alone = (clock: string): string => journalText(around(clock).split('\n').slice(1).join('\n'));
const within = (clock: string): string => journalText(`${around(clock)}\n13:00:00 RO8 A light off`);

test('one switchover in each of two files that follow each other may be two: there is no offset, in either order', async () => {
  expect(await aheads({ 'a.log': alone('10:05:00'), 'b.log': alone('12:00:00') })).toEqual([]);
  expect(await aheads({ 'b.log': alone('12:00:00'), 'a.log': alone('10:05:00') })).toEqual([]);
});

test('nor is it measured where both were written at one time', async () => {
  expect(await aheads({ 'a.log': within('10:05:00'), 'b.log': within('12:00:00') })).toEqual([null]);
});

test('a second moment proves it', async () => {
  const twice = (first: string, second: string): string =>
    journalText(
      `${around(first)}\n${second} RO1 A light flashing\n${second} RO1 A supply fault\n13:00:00 RO8 A light off`,
    );
  expect(
    await aheads({ 'a.log': twice('10:05:00', '10:20:00'), 'b.log': twice('10:06:00', '10:21:00') }),
  ).toEqual([60_000]);
});
