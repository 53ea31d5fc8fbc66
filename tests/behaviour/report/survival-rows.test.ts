import { describe, expect, test } from 'vitest';
import { survivalRows } from '../../../src/report/survival-rows.ts';
import type { Fleet, SurvivalPoint } from '../../../src/vocabulary.ts';

type Group = Fleet['groups'][number];
const unknown = { value: null, low: null, high: null };

function group(name: string, ...steps: readonly (readonly [seconds: number, surviving: number])[]): Group {
  const survival: readonly SurvivalPoint[] = steps.map(([seconds, surviving]) => ({
    seconds,
    surviving,
    low: null,
    high: null,
  }));
  const value = steps.find(([, surviving]) => surviving <= 0.5)?.[0] ?? null;
  return {
    ...{ group: name, cause: 'restart', attempts: 10, censored: 0, superseded: 0, survival },
    ...{ median: { ...unknown, value }, p95: unknown, tolerance9595: null, neededFor9595: 59, trend: null },
  };
}

function drawn(...groups: readonly Group[]): ReturnType<typeof survivalRows> {
  return survivalRows({ groups, lightLimitSeconds: 300 }, 'restart');
}

describe('curves of sync times', () => {
  test('go on up to the limit where superseded attempts hold them up and none may still become ready', () => {
    const half = group('6.2.0', [80, 0.5]);
    const ends = (superseded: number, censored: number): unknown =>
      drawn({ ...half, superseded, censored }).map((row) => [row.seconds, row.percent, row.label]);
    expect(ends(5, 0)).toEqual([
      [0, 100, ''],
      [80, 50, '6.2.0 (n = 10)'],
      [300, 50, ''],
    ]);
    for (const [superseded, censored] of [
      [4, 1],
      [0, 5],
    ] as const)
      expect(ends(superseded, censored)).toHaveLength(2);
  });

  test('begin at all of the attempts, and show every step up to twenty minutes', () => {
    const rows = drawn(group('6.2.0', [80, 0.5], [1200, 0]));
    expect(rows.map((row) => [row.seconds, row.percent, row.drawnTo])).toEqual([
      [0, 100, null],
      [80, 50, null],
      [1200, 0, null],
    ]);
  });

  test('end there where one goes on, each as high as it then is; one that has fallen to nothing ends where it fell', () => {
    const rows = drawn(
      group('6.2.0', [80, 0.5], [1201, 0]),
      group('6.4.1', [90, 0]),
      group('late', [1300, 0]),
    );
    const last = ['6.2.0', '6.4.1', 'late'].map((name) => rows.findLast((row) => row.group === name));
    expect(last.map((row) => [row?.seconds, row?.percent, row?.drawnTo])).toEqual([
      [1200, 50, 1200],
      [90, 0, 1200],
      [1200, 100, 1200],
    ]);
  });

  test('are no more than lines can be told apart, the slowest and those never half ready', () => {
    const quick = [60, 70, 80, 90, 100, 110].map((seconds) => group(`after ${seconds}`, [seconds, 0]));
    const names = new Set(drawn(...quick, group('seldom', [60, 0.9])).map((row) => row.group));
    expect([...names]).toEqual(['after 80', 'after 90', 'after 100', 'after 110', 'seldom']);
  });

  test('have one label each, also where a curve never falls, and none covers another', () => {
    const rows = drawn(group('a', [60, 0.97]), group('b', [70, 0.96]), group('c', [80, 0.98]));
    const labels = rows.filter((row) => row.label !== '');
    expect(labels.map((row) => row.label)).toEqual(['a', 'b', 'c']);
    const places = labels.map((row) => row.labelAt).sort((x, y) => x - y);
    for (const [index, place] of places.entries())
      if (index > 0) expect(place - (places[index - 1] ?? 0)).toBeGreaterThanOrEqual(8);
  });

  test('of one or two groups say the sample beside the line', () => {
    const rows = drawn(group('6.2.0', [80, 0]), group('6.4.1', [90, 0]));
    expect(rows.flatMap((row) => (row.label === '' ? [] : [row.label]))).toEqual([
      '6.2.0 (n = 10)',
      '6.4.1 (n = 10)',
    ]);
  });

  test('are none where no attempt was seen to become ready', () => {
    expect(drawn({ ...group('6.2.0'), censored: 10 })).toEqual([]);
  });
});
