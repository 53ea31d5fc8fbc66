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

test('of files that follow each other as they are printed a third moment does, since two may be alike by chance', async () => {
  const told = (clock: string, ...lights: readonly string[]): string =>
    `${alone(clock)}${journalText(lights.map((light, index) => `${light} RO1 A light ${index === 0 ? 'flashing' : 'off'}`).join('\n'))}`;
  expect(
    await aheads({ 'a.log': told('10:05:00', '10:20:00'), 'b.log': told('11:05:00', '11:20:00') }),
  ).toEqual([]);
  expect(
    await aheads({
      'a.log': told('10:05:00', '10:20:00', '10:25:00'),
      'b.log': told('11:05:00', '11:20:00', '11:25:00'),
    }),
  ).toEqual([3_600_000]);
});

test('an export in two that overlap, and say nothing where they do, is measured as one', async () => {
  const link = (clock: string, minute: number): string =>
    `${clock.slice(0, 3)}${String(minute).padStart(2, '0')}${clock.slice(5)} RO1 B link a ${minute % 10 === 0 ? 'down' : 'up'}`;
  const lines = (clock: string): readonly string[] =>
    [5, 10, 15, 20, 25, 30].map((minute) => link(clock, minute));
  const quiet = (clock: string): string => `${clock} RO1 nothing of note`;
  const pieces = (clock: string): readonly string[] => [
    [...lines(clock).slice(0, 3), quiet(`${clock.slice(0, 3)}18:00`)].join('\n'),
    [quiet(`${clock.slice(0, 3)}17:00`), ...lines(clock).slice(3)].join('\n'),
  ];
  const [one = '', other = ''] = pieces('10:00:37').map(journalText);
  const whole = journalText(lines('10:00:00').join('\n'));
  expect(await aheads({ 'a.log': whole, 'export-1.log': one, 'export-2.log': other })).toEqual([
    37_000, 37_000,
  ]);
  // Three changes are too few where nothing says that they are of one export.
  expect(await aheads({ 'a.log': whole, 'export.log': one, 'more.log': other })).toEqual([null, null]);
});

test('the order in which files are given chooses no clock', async () => {
  const three = { 'a.log': around('10:05:00'), 'b.log': around('10:06:00'), 'c.log': around('10:07:00') };
  const texts = Object.entries(three).map(([name, text], index) => [
    name,
    journalText(`${text}\n${10 + index}:40:00 RO1 A supply fault\n13:00:00 RO8 A light off`),
  ]);
  const said = async (entries: readonly (readonly string[])[]): Promise<readonly string[]> =>
    clockOffsets((await readTexts(Object.fromEntries(entries))).files, null, defaultRules)
      .map(({ file, reference, ahead }) => `${file} ${reference} ${ahead}`)
      .sort();
  expect(await said(texts.toReversed())).toEqual(await said(texts));
});
