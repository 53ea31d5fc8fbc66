import { describe, expect, test } from 'vitest';
import { unobservedIn } from '../../../src/timeline/observation.ts';
import { factsOfPair } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const first = ['10:00:00 RO1 A supply good', '10:00:00 RO1 partner ready', '10:10:00 RO1 A link a up'];
const second = ['10:10:00 RO1 A link a up', '10:20:00 RO1 A link a down', '10:30:00 RO1 A link a up'];

/** The minutes of the log that the supply of half A is not observed in. */
async function unobserved(files: Readonly<Record<string, readonly string[]>>): Promise<readonly string[]> {
  const texts = Object.entries(files).map(([name, lines]) => [name, journalText(lines.join('\n'))] as const);
  const { timeline } = await factsOfPair(Object.fromEntries(texts));
  const minute = (time: number): string => `${(time / 60_000 - 600) % 1440}`;
  return unobservedIn(timeline, 'A', 'supply', timeline.from, timeline.to).map(
    (u) => `${minute(u.from)} to ${minute(u.to)}`,
  );
}

describe('a journal in two files', () => {
  test('that overlap, and say the same where they do, watches all that one of them tells of', async () => {
    expect(await unobserved({ 'a.log': first, 'export.log': second })).toEqual([]);
    expect(await unobserved({ 'a.log': [...first, ...second.slice(1)], 'copy.log': first })).toEqual([]);
  });

  test('that bear one name but for its numbers, and do not overlap, watches it but between them', async () => {
    expect(await unobserved({ 'ro1-13.log': first, 'ro1-14.log': second.slice(1) })).toEqual(['10 to 20']);
    expect(await unobserved({ 'ro1.log': second.slice(1), 'ro1.log.1': first })).toEqual(['10 to 20']);
  });

  test('is two journals where the names differ', async () => {
    expect(await unobserved({ 'ro1.log': first, 'remarks.log': second.slice(1) })).toEqual(['10 to 30']);
  });

  test('is two journals where they overlap and one tells what the other does not', async () => {
    const more = ['10:05:00 RO1 A link b up', '10:06:00 RO1 A link b down', ...second];
    expect(await unobserved({ 'node-1.log': first, 'node-2.log': more })).toEqual(['10 to 30']);
    const less = ['10:05:00 RO1 A link b up', ...second.slice(1)];
    expect(await unobserved({ 'node-1.log': first, 'node-2.log': less })).toEqual(['10 to 30']);
  });

  test('is two journals where they overlap and the earlier tells what the later does not', async () => {
    const earlier = [
      ...first.slice(0, 2),
      '10:05:00 RO1 A link b up',
      '10:07:00 RO1 A link b down',
      ...first.slice(2),
    ];
    const later = ['10:05:00 RO1 A link b up', ...second];
    expect(await unobserved({ 'node-1.log': earlier, 'node-2.log': later })).toEqual(['10 to 30']);
  });

  test('may begin and end in the middle of a stamp', async () => {
    const cut = ['10:10:00 RO1 B link a up', ...second];
    expect(await unobserved({ 'a.log': first, 'b.log': cut })).toEqual([]);
    const ending = [...first.slice(0, 2), '10:10:00 RO1 B link a up', ...first.slice(2)];
    expect(await unobserved({ 'a.log': ending, 'b.log': second })).toEqual([]);
  });

  test('that overlap where nothing is said of the pair is known by what is said of others there', async () => {
    const of = (...lines: readonly string[]): readonly string[] => [
      '10:08:00 RO2 A link a down',
      ...lines,
      '10:10:00 RO2 A link a up',
    ];
    const other = '10:09:00 RO2 A supply fault';
    const before = first.slice(0, 2);
    const after = second.slice(1);
    expect(await unobserved({ 'a.log': [...before, ...of()], 'b.log': [...of(), ...after] })).toEqual([]);
    expect(await unobserved({ 'a.log': [...before, ...of()], 'b.log': [...of(other), ...after] })).toEqual([
      '10 to 30',
    ]);
  });

  test('that overlap where nothing at all is said bear one name but for its numbers, or are two', async () => {
    const before = [...first.slice(0, 2), '10:12:00 RO1 nothing of note'];
    const after = ['10:11:00 RO1 nothing of note either', ...second.slice(1)];
    expect(await unobserved({ 'ro1-13.log': before, 'ro1-14.log': after })).toEqual([]);
    expect(await unobserved({ 'ro1.log': before, 'remarks.log': after })).toEqual(['12 to 30']);
  });
});
