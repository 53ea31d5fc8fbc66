import { describe, expect, test } from 'vitest';
import { clip, subtract, total, totalWithin } from '../../../src/timeline/coverage.ts';
import type { Interval } from '../../../src/vocabulary.ts';
import { type Polled, pollText } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair, type Told } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const span = (from: number, to: number): Interval => ({ from, to });

test('what lies within windows that overlap and come in any order', () => {
  // Within: 5 to 14, and 18 to 20.
  expect(totalWithin([span(0, 20)], [span(10, 13), span(5, 14), span(18, 30)])).toBe(11);
  // What was not observed counts neither way: 3 to 5 is left.
  expect(totalWithin([span(0, 5), span(15, 20)], [span(3, 15)])).toBe(2);
  expect(totalWithin([], [span(0, 1)])).toBe(0);
  // Windows that touch are one: nothing is counted twice.
  expect(totalWithin([span(0, 20)], [span(2, 5), span(5, 9), span(2, 3)])).toBe(7);
});

test('what is left of spans without holes', () => {
  expect(subtract([span(0, 10)], [span(2, 4), span(6, 7)])).toEqual([span(0, 2), span(4, 6), span(7, 10)]);
  expect(subtract([span(0, 10)], [span(0, 3), span(8, 12)])).toEqual([span(3, 8)]);
  expect(subtract([span(0, 10)], [span(10, 12), span(-3, 0)])).toEqual([span(0, 10)]);
  expect(subtract([span(0, 10)], [span(-1, 11)])).toEqual([]);
  expect(subtract([span(0, 4), span(6, 9)], [span(3, 7)])).toEqual([span(0, 3), span(7, 9)]);
  // An instant is left unless a hole covers it.
  expect(subtract([span(5, 5)], [])).toEqual([span(5, 5)]);
  expect(subtract([span(5, 5)], [span(4, 6)])).toEqual([]);
});

test('the part of spans between two instants', () => {
  expect(clip([span(0, 4), span(6, 9), span(12, 15)], 2, 12)).toEqual([span(2, 4), span(6, 9)]);
  expect(clip([span(0, 20)], 5, 7)).toEqual([span(5, 7)]);
  expect(clip([span(0, 5), span(7, 9)], 5, 7)).toEqual([]);
  expect(total([span(2, 4), span(6, 9)])).toBe(5);
});

describe('what a poll leaves unobserved', () => {
  const ready: Polled = ['RO1', 'partner-ready', ['10:00:00', 'yes']];
  const poll = (...gaps: readonly (readonly [string, string])[]): string =>
    pollText(['10:00:00', '10:30:00'], 10, [ready], gaps);
  const shown = (spans: readonly Interval[]): readonly string[] =>
    spans.map(({ from, to }) => `${clockOf(from)}-${clockOf(to)}`);
  const seen = async (story: Told): Promise<readonly (readonly string[])[]> => {
    const { timeline } = await factsOfPair(story);
    return [shown(timeline.unobserved), shown(timeline.observed)];
  };

  test('is a span longer than three times its spacing, with the readings before and after it', async () => {
    expect(await seen({ 'a.csv': poll(['10:10:10', '10:10:20']) })).toEqual([[], ['10:00:00-10:30:00']]);
    expect(await seen({ 'a.csv': poll(['10:10:10', '10:10:30']) })).toEqual([
      ['10:10:00-10:10:40'],
      ['10:00:00-10:10:00', '10:10:40-10:30:00'],
    ]);
    const { timeline } = await factsOfPair({ 'a.csv': poll(['10:10:10', '10:19:50']) });
    // Line 2 is 10:00:00: ten minutes are sixty lines on, and the next line is 10:20:00.
    expect(timeline.unobserved[0]?.evidence.map((line) => line.line)).toEqual([62, 63]);
  });

  test('is what no other poll read either', async () => {
    const files = { 'a.csv': poll(['10:10:10', '10:19:50']), 'b.csv': poll(['10:05:10', '10:12:50']) };
    expect(await seen(files)).toEqual([['10:10:00-10:13:00'], ['10:00:00-10:10:00', '10:13:00-10:30:00']]);
    expect((await seen({ 'a.csv': poll(['10:10:10', '10:19:50']), 'b.csv': poll() }))[0]).toEqual([]);
    // The same span of two polls is one.
    const both = { 'a.csv': poll(['10:10:10', '10:19:50']), 'b.csv': poll(['10:10:10', '10:19:50']) };
    expect((await seen(both))[0]).toEqual(['10:10:00-10:20:00']);
  });

  test('is nothing of a journal, whose silence is no event', async () => {
    const log = journalText('10:00:00 RO1 partner ready\n10:30:00 RO1 configuration current');
    expect(await seen({ 'a.log': log })).toEqual([[], ['10:00:00-10:30:00']]);
  });

  test('is several spans, in the order of time', async () => {
    expect((await seen({ 'a.csv': poll(['10:20:10', '10:21:50'], ['10:10:10', '10:11:50']) }))[0]).toEqual([
      '10:10:00-10:12:00',
      '10:20:00-10:22:00',
    ]);
  });

  test('is nothing between two polls of which one begins with the last reading of the other', async () => {
    const part = (from: string, to: string): string => pollText([from, to], 10, [ready]);
    const files = { 'a.csv': part('10:00:00', '10:10:00'), 'b.csv': part('10:10:00', '10:20:00') };
    expect(await seen(files)).toEqual([[], ['10:00:00-10:20:00']]);
  });
});
