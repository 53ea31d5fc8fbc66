import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/pipeline.ts';
import { type ClockOffset, clockOffsets } from '../../../src/timeline/clock-offsets.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { at, pollText } from '../../support/clean-swap.ts';
import { clockOf, whenOf } from '../../support/pair-facts.ts';
import { journalText, readTexts } from '../../support/read-text.ts';

type Files = Readonly<Record<string, string>>;

async function offsets(files: Files, reference: string | null = null): Promise<readonly ClockOffset[]> {
  return clockOffsets((await readTexts(files)).files, reference, defaultRules);
}
const said = ({ file, reference, ahead, spread, count, isBeyond }: ClockOffset): string =>
  `${file} to ${reference}: ${ahead / 1000} s, spread ${spread / 1000} s, ${count}${isBeyond ? ', beyond' : ''}`;

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

  test('is not known of one file, nor of files that saw nothing together', async () => {
    const late = shifts(0, 0, 0, 0, 0, 0);
    expect(await offsets({ 'a.log': right })).toEqual([]);
    expect(await offsets({})).toEqual([]);
    expect(await offsets({ 'a.log': right, 'b.log': late.replaceAll('link a', 'link b') })).toEqual([]);
    expect(await offsets({ 'a.log': right, 'b.log': late.replaceAll('RO1-B', 'RO2-B') })).toEqual([]);
    // Their lines overlap nowhere: a quarter of an hour and more lies between.
    const later = late.replaceAll('T10:', 'T12:');
    expect(await offsets({ 'a.log': right, 'b.log': later })).toEqual([]);
  });

  test('counts each change once, with its nearest, and none outside the time that both cover', async () => {
    const one = journalText(
      '10:00:00 RO7 A role active\n10:10:00 RO1 B link a down\n10:50:00 RO7 A light off',
    );
    const twice = journalText(
      '10:00:00 RO8 A role active\n10:10:37 RO1 B link a down\n10:12:00 RO1 B link a up\n10:12:37 RO1 B link a down\n10:50:00 RO8 A light off',
    );
    const [found] = await offsets({ 'a.log': one, 'b.log': twice });
    // The second is nearest to it too, but it is not nearest to the second.
    expect([found?.count, found?.ahead]).toEqual([1, 37_000]);
    const short = journalText('10:00:00 RO7 A role active\n10:10:00 RO1 B link a down');
    expect(await offsets({ 'a.log': short, 'b.log': twice })).toEqual([]);
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
    expect(timeline?.unobserved.map((u) => u.from)).toEqual([at('10:40:37') - ahead]);
  });
});
