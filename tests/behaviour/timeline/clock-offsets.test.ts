import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/pipeline.ts';
import { clockOffsets } from '../../../src/timeline/clock-offsets.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import type { ClockOffset } from '../../../src/vocabulary.ts';
import { at, pollText } from '../../support/clean-swap.ts';
import { clockOf, whenOf } from '../../support/pair-facts.ts';
import { journalText, readTexts } from '../../support/read-text.ts';

type Files = Readonly<Record<string, string>>;

async function offsets(files: Files, reference: string | null = null): Promise<readonly ClockOffset[]> {
  return clockOffsets((await readTexts(files)).files, reference, defaultRules);
}
const said = ({ file, reference, ahead, spread, count, isBeyond }: ClockOffset): string => {
  const apart = ahead === null ? 'not measured' : `${ahead / 1000} s`;
  return `${file} to ${reference}: ${apart}, spread ${spread / 1000} s, ${count}${isBeyond ? ', beyond' : ''}`;
};

/** Six changes of a link, five minutes apart from 10:05 on, each stamped so many seconds late; between lines of another pair. */
const shifts = (...seconds: readonly number[]): string =>
  journalText(
    [
      '10:00:00 RO8 A role active',
      ...seconds.map((s, index) => {
        const clock = clockOf(at('10:05:00') + index * 300_000 + s * 1000);
        return `${clock} RO1 B link a ${index % 2 === 0 ? 'down' : 'up'}`;
      }),
      '10:50:00 RO8 A light off',
    ].join('\n'),
  );
const right = shifts(0, 0, 0, 0, 0, 0).replaceAll('RO8', 'RO7');

describe('how far one clock is ahead of another', () => {
  test('is the median of what their stamps of the same changes differ by', async () => {
    expect((await offsets({ 'a.log': right, 'b.log': shifts(37, 37, 37, 37, 37, 37) })).map(said)).toEqual([
      'b.log to a.log: 37 s, spread 0 s, 6, beyond',
    ]);
    expect(
      (await offsets({ 'a.log': right, 'b.log': shifts(-37, -37, -37, -37, -37, -37) })).map(said),
    ).toEqual(['b.log to a.log: -37 s, spread 0 s, 6, beyond']);
    // The middle of 36, 36.5, 37, 37, 37.5 and 60.
    const [found] = await offsets({ 'a.log': right, 'b.log': shifts(36, 36.5, 37, 37, 37.5, 60) });
    expect(found?.ahead).toBe(37_000);
  });

  test('is not beyond what may be chance up to two seconds', async () => {
    expect((await offsets({ 'a.log': right, 'b.log': shifts(2, 2, 2, 2, 2, 2) })).map(said)).toEqual([
      'b.log to a.log: 2 s, spread 0 s, 6',
    ]);
    expect(
      (await offsets({ 'a.log': right, 'b.log': shifts(2.001, 2.001, 2.001, 2.001, 2.001, 2.001) }))[0]
        ?.isBeyond,
    ).toBe(true);
  });

  test('is counted against the first file with exact entries, or the one that is named', async () => {
    const poll = pollText(['10:00:00', '10:50:00'], 10, [
      ['RO1-B', 'link-a', ['10:00:00', 'up'], ['10:05:00', 'down'], ['10:10:00', 'up']],
    ]);
    const files = { 'a.csv': poll, 'b.log': right, 'c.log': shifts(37, 37, 37, 37, 37, 37) };
    expect((await offsets(files)).map((o) => `${o.file} to ${o.reference}`)).toEqual([
      'a.csv to b.log',
      'c.log to b.log',
    ]);
    expect((await offsets(files, 'c.log')).map((o) => `${o.file} to ${o.reference}`)).toEqual([
      'a.csv to c.log',
      'b.log to c.log',
    ]);
    expect(
      (await offsets({ 'a.csv': poll, 'b.csv': poll })).map((o) => `${o.file} to ${o.reference}`),
    ).toEqual(['b.csv to a.csv']);
  });

  test('is counted against the densest poll where nothing is exact, in any order of the files', async () => {
    const polled = (from: string, seconds: number): string =>
      pollText([from, '10:50:00'], seconds, [
        ['RO1-B', 'link-a', [from, 'up'], ['10:05:00', 'down'], ['10:10:00', 'up']],
      ]);
    const [dense, sparse] = [polled('10:00:03', 10), polled('10:00:00', 60)];
    const against = async (files: Files): Promise<readonly string[]> =>
      (await offsets(files)).map((o) => `${o.file} to ${o.reference}`);
    expect(await against({ 'a.csv': sparse, 'b.csv': dense })).toEqual(['a.csv to b.csv']);
    expect(await against({ 'a.csv': dense, 'b.csv': sparse })).toEqual(['b.csv to a.csv']);
  });

  test('is the same beside a log of another pair', async () => {
    const late = shifts(37, 37, 37, 37, 37, 37);
    const other = journalText(['09:00:00 RO5 A role active', '11:00:00 RO5 A light off'].join('\n'));
    expect((await offsets({ 'a.log': other, 'b.log': right, 'c.log': late })).map(said)).toEqual([
      'c.log to b.log: 37 s, spread 0 s, 6, beyond',
    ]);
  });

  test('is the same where the export of one comes in two that overlap', async () => {
    const late = shifts(37, 37, 37, 37, 37, 37);
    const lines = late.split('\n');
    // Line 1 is of RO8, the changes of the link follow: the parts share two of them, and have four and five each.
    const [one, two] = [lines.slice(0, 5).join('\n'), lines.slice(3).join('\n')];
    expect((await offsets({ 'a.log': right, 'b.log': one, 'c.log': two })).map(said)).toEqual([
      'b.log to a.log: 37 s, spread 0 s, 6, beyond',
      'c.log to a.log: 37 s, spread 0 s, 6, beyond',
    ]);
  });

  test('is not measured where two files of one time and pair saw nothing together', async () => {
    const late = shifts(0, 0, 0, 0, 0, 0);
    expect(
      (await offsets({ 'a.log': right, 'b.log': late.replaceAll('link a', 'link b') })).map(said),
    ).toEqual(['b.log to a.log: not measured, spread 0 s, 0']);
  });

  test('is not asked for one file, nor of files of other pairs or of another time', async () => {
    const late = shifts(0, 0, 0, 0, 0, 0);
    expect(await offsets({ 'a.log': right })).toEqual([]);
    expect(await offsets({})).toEqual([]);
    expect(await offsets({ 'a.log': right, 'b.log': late.replaceAll('RO1-B', 'RO2-B') })).toEqual([]);
    // Three hours later: no clock is so far off.
    const later = late.replaceAll('T10:', 'T13:');
    expect(await offsets({ 'a.log': right, 'b.log': later })).toEqual([]);
  });

  test('is measured from five changes that both saw, and not from four', async () => {
    expect((await offsets({ 'a.log': right, 'b.log': shifts(37, 37, 37, 37, 37) })).map(said)).toEqual([
      'b.log to a.log: 37 s, spread 0 s, 5, beyond',
    ]);
    expect((await offsets({ 'a.log': right, 'b.log': shifts(37, 37, 37, 37) })).map(said)).toEqual([
      'b.log to a.log: not measured, spread 0 s, 4',
    ]);
  });

  test('is measured where the differences scatter up to two seconds, and not beyond', async () => {
    // About the median 37 nine in ten of six differences are all six: the farthest lies 2 s off, then 2.1 s.
    expect((await offsets({ 'a.log': right, 'b.log': shifts(37, 37, 37, 37, 37, 39) })).map(said)).toEqual([
      'b.log to a.log: 37 s, spread 2 s, 6, beyond',
    ]);
    const [found] = await offsets({ 'a.log': right, 'b.log': shifts(37, 37, 37, 37, 34.9, 39.1) });
    expect(found?.ahead).toBeNull();
  });

  test('counts each change once and in order: a change that only one file saw is passed over', async () => {
    const more = `${shifts(37, 37, 37, 37, 37, 37)}2026-03-14T10:07:00.000Z RO1-B link a down\n`;
    expect((await offsets({ 'a.log': right, 'b.log': more })).map(said)).toEqual([
      'b.log to a.log: 37 s, spread 0 s, 6, beyond',
    ]);
  });

  test('is the least of several that bring equally many changes together', async () => {
    // Seven restarts five minutes apart; the other file tells of five, 37 s, or five minutes more or less, apart from them.
    const restarts = (from: string, count: number): string =>
      journalText(
        Array.from(
          { length: count },
          (_, index) => `${clockOf(at(from) + index * 300_000)} RO1 B module restart`,
        ).join('\n'),
      );
    const files = { 'a.log': restarts('10:05:00', 7), 'b.log': restarts('10:10:37', 5) };
    expect((await offsets(files)).map(said)).toEqual(['b.log to a.log: 37 s, spread 0 s, 5, beyond']);
  });

  test('against a poll is known as far as its spacing allows', async () => {
    // Five changes, logged 3 s after the reading before and 7 s before the one that shows them: -7 s to 3 s.
    const changes = ['down', 'up', 'down', 'up', 'down'];
    const clockAt = (index: number, seconds: number): string =>
      clockOf(at('10:05:00') + index * 300_000 + seconds * 1000);
    const poll = pollText(['10:00:00', '10:50:00'], 10, [
      ['RO1-B', 'link-a', ['10:00:00', 'up'], ...changes.map((v, i) => [clockAt(i, 0), v] as const)],
    ]);
    const log = journalText(changes.map((v, i) => `${clockAt(i, -7)} RO1 B link a ${v}`).join('\n'));
    const [found] = await offsets({ 'a.csv': poll, 'b.log': log }, 'a.csv');
    // The middles of the poll's bounds lie 2 s later; from there it is 5 s to either end.
    expect([found?.ahead, found?.within]).toEqual([-2000, 5000]);
  });

  test('rests on a line of each', async () => {
    const [found] = await offsets({ 'a.log': right, 'b.log': shifts(37, 37, 37, 37, 37, 37) });
    expect(found?.evidence.map((line) => `${line.file}:${line.line}`)).toEqual(['b.log:2', 'a.log:2']);
  });
});

describe('a clock that is set right', () => {
  test('tells of the same changes at the same times, with bins, readings and gaps moved along', async () => {
    const poll = pollText(
      ['10:00:37', '10:50:37'],
      10,
      [
        [
          'RO1-B',
          'link-a',
          ['10:00:37', 'up'],
          ['10:05:37', 'down'],
          ['10:10:37', 'up'],
          ['10:15:37', 'down'],
          ['10:20:37', 'up'],
          ['10:25:37', 'down'],
          ['10:30:37', 'up'],
        ],
        ['RO1-A', 'load', ['10:00:37', '40']],
        ['RO1', 'partner-ready', ['10:00:37', 'yes']],
      ],
      [['10:40:40', '10:44:50']],
    );
    const imported = await readTexts({ 'a.log': right, 'poll.csv': poll });
    const { timelines, offsets: measured } = analyse(imported, undefined, { align: true, reference: null });
    expect(measured.map((o) => o.isBeyond)).toEqual([true]);
    const [timeline] = timelines;
    const links = timeline?.events.filter((e) => e.signal === 'link-a' && !e.initial) ?? [];
    // Each is one event, at the stamp of the journal, with a line of both files.
    expect(links.map((e) => `${whenOf(e)} ${e.sources.length}`)).toEqual(
      ['10:05:00', '10:10:00', '10:15:00', '10:20:00', '10:25:00', '10:30:00'].map((clock) => `${clock} 2`),
    );
    const ahead = measured[0]?.ahead ?? 0;
    expect(timeline?.gauges.flatMap((g) => g.bins.map((b) => b.from))[0]).toBe(at('10:00:00') - ahead);
    // Only the poll tells whether the partner was ready: nothing is known from the journal's begin to its first reading, nor in
    // its gap.
    expect(timeline?.unobserved.map((u) => [u.from, u.to])).toEqual([
      [at('10:00:00'), at('10:00:37') - ahead],
      [at('10:40:37') - ahead, at('10:44:57') - ahead],
    ]);
  });

  test('covers the time that its file covers by the clock of the other', async () => {
    // An hour ahead: it was written from 10:00 to 10:50, as the other, and alone tells of a partner.
    const hourLate = `${right.replaceAll('T10:', 'T11:').replaceAll('RO7', 'RO8')}2026-03-14T11:30:00.000Z RO1 partner ready\n`;
    const imported = await readTexts({ 'a.log': right, 'b.log': hourLate });
    const { timelines } = analyse(imported, undefined, { align: true, reference: null });
    const ofPair = timelines.find((t) => t.pair === 'RO1');
    expect([ofPair?.from, ofPair?.to]).toEqual([at('10:00:00'), at('10:50:00')]);
    expect(ofPair?.observed).toEqual([{ from: at('10:00:00'), to: at('10:50:00') }]);
  });
});
