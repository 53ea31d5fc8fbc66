import { describe, expect, test } from 'vitest';
import { unobservedIn } from '../../../src/timeline/observation.ts';
import { factsOfPair } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const minute = (time: number): number => (time / 60_000 - 600) % 1440;

/** The minute at which what is known of RO1 ends, and those in which the supply of its half A is not observed. */
async function known(files: Readonly<Record<string, readonly string[]>>): Promise<string> {
  const texts = Object.entries(files).map(([name, lines]) => [name, journalText(lines.join('\n'))] as const);
  const { timeline } = await factsOfPair(Object.fromEntries(texts));
  const open = unobservedIn(timeline, 'A', 'supply', timeline.from, timeline.to);
  return [`to ${minute(timeline.to)}`, ...open.map((u) => `not ${minute(u.from)} to ${minute(u.to)}`)].join(
    ', ',
  );
}

const first = ['10:00:00 RO1 A supply good', '10:00:00 RO2 A supply good', '10:10:00 RO2 A link a up'];

describe('a part of a journal that says nothing of a pair', () => {
  test('watches it all the same: other units are of both parts', async () => {
    const second = ['10:20:00 RO2 A link a down', '10:30:00 RO2 A link a up'];
    expect(await known({ 'day-1.log': first, 'day-2.log': second })).toBe('to 30, not 10 to 20');
    const overlapping = ['10:10:00 RO2 A link a up', ...second];
    expect(await known({ 'day-1.log': first, 'day-2.log': overlapping })).toBe('to 30');
  });
  test('is no part of it under another name, without a unit of both, or where it tells other things at the same time', async () => {
    expect(await known({ 'day-1.log': first, 'notes.log': ['10:30:00 RO2 A link a up'] })).toBe('to 10');
    expect(await known({ 'ro-1.log': first.slice(0, 1), 'ro-2.log': ['10:30:00 RO2 A link a up'] })).toBe(
      'to 0',
    );
    const other = ['10:05:00 RO2 A link b down', '10:30:00 RO2 A link a up'];
    expect(await known({ 'node-1.log': first, 'node-2.log': other })).toBe('to 10');
  });
});
