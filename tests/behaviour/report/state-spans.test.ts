import { describe, expect, test } from 'vitest';
import { foldedStates, stateRowRows } from '../../../src/report/state-spans.ts';
import type { StateSpan } from '../../../src/vocabulary.ts';

const span = (
  half: string,
  signal: StateSpan['signal'],
  value: string,
  from: number,
  to: number,
): StateSpan => ({
  half,
  signal,
  value,
  from,
  to,
});

describe('the rows beneath the staff', () => {
  test('are cut to what is shown, moved to its clock, and ordered by half and state', () => {
    const rows = stateRowRows(
      [span('B', 'link-a', 'up', 0, 900), span('A', 'firmware', '6.4.1', 0, 50_000)],
      { from: 100, to: 760 },
      3000,
      660,
    );
    expect(rows.map((r) => [r.name, r.from, r.to, r.isAbnormal])).toEqual([
      ['A firmware', 3100, 3760, false],
      ['B link a', 3100, 3760, false],
    ]);
  });
  test('say a value only where there is room for it', () => {
    // 660 units for 660 ms: a unit is a millisecond; five letters of 7.2 units and a margin of 6 take 42.
    const shown = { from: 0, to: 660 };
    const words = [41, 42].map(
      (to) => stateRowRows([span('A', 'firmware', '6.4.1', 0, to)], shown, 0, 660)[0]?.word,
    );
    expect(words).toEqual(['', '6.4.1']);
  });
  test('keep a link that was down for an instant, however many changes share its unit', () => {
    const shown = { from: 0, to: 660_000 };
    const flaps = Array.from({ length: 3000 }, (_, index) =>
      span('A', 'link-a', index === 1500 ? 'down' : 'up', index * 220, index * 220 + 220),
    );
    const rows = stateRowRows(flaps, shown, 0, 660);
    expect(rows.filter((r) => r.isAbnormal).map((r) => r.from)).toEqual([330_000]);
    expect(rows.length).toBeLessThanOrEqual(661);
  });
});

describe('what stays as it should be', () => {
  const shown = { from: 0, to: 100 };
  const quiet = ['A', 'B'].flatMap((half) => [
    span(half, 'link-a', 'up', 0, 100),
    span(half, 'link-b', 'up', 0, 100),
    span(half, 'links', 'straight', 0, 100),
    span(half, 'firmware', '6.4.1', 0, 100),
  ]);

  test('is one line for both halves', () => {
    expect(foldedStates(quiet, shown)).toEqual({
      told: [],
      rest: ['Links of both halves up and straight throughout.', 'Firmware of both halves 6.4.1 throughout.'],
    });
  });

  test('leaves drawn what changes in what is shown, and what is not as it should be', () => {
    const down = span('B', 'link-a', 'down', 40, 60);
    const crossed = span('A', 'links', 'crossed', 0, 100);
    const { told, rest } = foldedStates(
      [
        ...quiet.filter((s) => s.signal !== 'links' && !(s.half === 'B' && s.signal === 'link-a')),
        span('B', 'link-a', 'up', 0, 40),
        down,
        span('B', 'link-a', 'up', 60, 100),
        crossed,
      ],
      shown,
    );
    expect(told.map((s) => `${s.half} ${s.signal} ${s.value}`)).toEqual([
      'B link-a up',
      'B link-a down',
      'B link-a up',
      'A links crossed',
    ]);
    expect(rest).toEqual([
      'Links of half A up throughout.',
      'Links of half B link b up throughout.',
      'Firmware of both halves 6.4.1 throughout.',
    ]);
    // Before it went down there is nothing to draw.
    expect(foldedStates([span('B', 'link-a', 'up', 0, 40), down], { from: 0, to: 30 }).told).toEqual([]);
  });

  test('says nothing of what was never reported', () => {
    expect(foldedStates([], shown)).toEqual({ told: [], rest: [] });
  });
});
