import { describe, expect, test } from 'vitest';
import { censusRows, driftRows } from '../../../src/report/fleet-rows.ts';
import type { Fleet, SyncDrift } from '../../../src/vocabulary.ts';

/** Sync times a day apart; those outside are named by their place. */
function drift(count: number, ...outside: readonly number[]): SyncDrift {
  const points = Array.from({ length: count }, (_, index) => ({
    ...{ pair: 'RO1', time: index * 86_400_000, seconds: 80, average: outside.includes(index) ? 95 : 80 },
    isOutside: outside.includes(index),
  }));
  return { group: '6.2.0', cause: 'restart', target: 80, low: 70, high: 90, points };
}

function words(given: SyncDrift): readonly (readonly [number, string])[] {
  return driftRows(given).flatMap(({ word }, index) => (word === '' ? [] : [[index, word] as const]));
}

describe('smoothed sync times', () => {
  test('say nothing where none is outside', () => {
    expect(words(drift(20))).toEqual([]);
  });
  // 40 days: a word has room for five of them, an eighth of 40.
  test('say beside what is outside that it is, where there is room for the word', () => {
    expect(words(drift(41, 3, 4, 20))).toEqual([
      [3, 'outside'],
      [20, 'outside'],
    ]);
  });
  test('say at the end how long, and leave that room', () => {
    expect(words(drift(41, 3, 30, 40))).toEqual([
      [3, 'outside'],
      [40, '1 min 35 s, outside its limits'],
    ]);
  });
  test('of one time say that it is outside once', () => {
    expect(words(drift(1, 0))).toEqual([[0, '1 min 35 s, outside its limits']]);
  });
});

describe('a census', () => {
  const counts = (halves: readonly (readonly [string, number, number])[]): Fleet['census'] =>
    halves.flatMap(([value, before, after]) => [
      { time: 0, signal: 'firmware' as const, value, halves: before },
      { time: 1, signal: 'firmware' as const, value, halves: after },
    ]);
  const labels = (census: Fleet['census']): readonly (readonly [string, number])[] =>
    censusRows({ census }, 'firmware').flatMap((r) =>
      r.label === '' ? [] : [[r.label, r.labelAt] as const],
    );

  test('labels also the value that no half says any more', () => {
    const found = labels(
      counts([
        ['6.2.0', 14, 0],
        ['6.4.1', 0, 14],
      ]),
    );
    expect(found).toEqual([
      ['6.2.0: 0', 0],
      ['6.4.1: 14', 14],
    ]);
  });
  // Seven labels find room beside the highest figure, 14: they are 2 apart.
  test('keeps labels of the same figure apart', () => {
    const found = labels(
      counts([
        ['a', 14, 14],
        ['b', 14, 14],
        ['c', 14, 5],
      ]),
    );
    expect(found).toEqual([
      ['a: 14', 12],
      ['b: 14', 14],
      ['c: 5', 5],
    ]);
  });
  test('draws of many the five that most halves say', () => {
    const found = labels(counts(['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((v, i) => [v, 1, i + 1] as const)));
    expect(found.map(([label]) => label)).toEqual(['c: 3', 'd: 4', 'e: 5', 'f: 6', 'g: 7']);
  });
});
