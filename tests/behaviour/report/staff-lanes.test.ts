import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labelsOf, laneRows, lanesOf } from '../../../src/report/staff-lanes.ts';
import type { Staff, StaffState } from '../../../src/vocabulary.ts';

const second = 1000;
const minute = 60 * second;

function state(kind: StaffState['kind'], from: number, to: number): StaffState {
  return { kind, half: null, from, to, seconds: (to - from) / 1000, count: 1, losses: 0, goesOn: false };
}

const bare: Staff = {
  from: 0,
  to: 100 * minute,
  limitSeconds: 300,
  halves: ['A', 'B'],
  stretches: [],
  lights: [],
  ticks: [],
  switchovers: [],
  bringUps: [],
  unobserved: [],
  states: [],
};
/** A minute is ten units: the staff is 1000 units wide. */
const perUnit = 6 * second;

describe('the labels of a lane', () => {
  test('say each state by itself where there is room', () => {
    // `no ready partner 17 min 08 s` has 28 letters of 7.2 units: 201.6, and a gap of 8.
    const states = [
      state('no-ready-partner', 0, 17 * minute + 8 * second),
      state('no-ready-partner', 50 * minute, 52 * minute),
    ];
    expect(labelsOf(states, bare, perUnit)).toEqual([
      { x: 0, text: 'no ready partner 17 min 08 s' },
      { x: 50 * minute, text: 'no ready partner 2 min 00 s' },
    ]);
  });

  test('say together what has no room side by side, with its count and its length', () => {
    const states = [
      state('no-ready-partner', 0, 2 * minute),
      state('no-ready-partner', 10 * minute, 13 * minute),
      state('no-ready-partner', 90 * minute, 91 * minute),
    ];
    // The last would run over the end: it stands as far left as it must, 27 letters of 7.2 units before 1000.
    expect(labelsOf(states, bare, perUnit)).toEqual([
      { x: 0, text: 'no ready partner 2 times, 5 min 00 s' },
      { x: (1000 - 27 * 7.2) * perUnit, text: 'no ready partner 1 min 00 s' },
    ]);
  });

  test('are shortened to the name where a staff is too narrow for more', () => {
    const states = [state('no-ready-partner', 0, minute), state('no-ready-partner', 2 * minute, 3 * minute)];
    const in_ = (units: number): readonly string[] =>
      labelsOf(states, bare, bare.to / units).map((l) => l.text);
    // 36, 24 and 16 letters of 7.2 units: 259.2, 172.8 and 115.2.
    expect(in_(260)).toEqual(['no ready partner 2 times, 2 min 00 s']);
    expect(in_(259)).toEqual(['no ready partner 2 times']);
    expect(in_(172)).toEqual(['no ready partner']);
    expect(in_(115)).toEqual([]);
  });

  test('never meet, never run over the end, and tell of every state, wherever they fall', () => {
    const spans = fc.array(
      fc
        .tuple(fc.integer({ min: 0, max: 5999 }), fc.integer({ min: 1, max: 600 }))
        .map(([from, length]) =>
          state('flapping', from * second, Math.min(bare.to, (from + length) * second)),
        ),
      { minLength: 1, maxLength: 60 },
    );
    fc.assert(
      fc.property(spans, fc.integer({ min: 300, max: 2000 }), (states, units) => {
        const each = bare.to / units;
        const labels = labelsOf(
          states.map((s) => ({ ...s, losses: 3 })),
          bare,
          each,
        );
        for (const [index, { x, text }] of labels.entries()) {
          // A letter of 13 px sans text takes about 7 units.
          const end = x + text.length * 7 * each;
          expect(end).toBeLessThanOrEqual(labels[index + 1]?.x ?? bare.to);
          expect(x).toBeGreaterThanOrEqual(bare.from);
        }
        const losses = labels.map(({ text }) => Number(/(\d+) losses/.exec(text)?.[1]));
        expect(losses.reduce((sum, n) => sum + n, 0)).toBe(3 * states.length);
      }),
    );
  });
});

describe('the lanes of a staff', () => {
  const states = [
    state('unobserved', 10 * minute, 20 * minute),
    state('no-ready-partner', 0, 5 * minute),
    state('two-active', minute, minute + second),
  ];

  test('stand in the order of gravity, each kind with its look, over the axis', () => {
    const staff = { ...bare, states };
    expect(lanesOf(staff)).toEqual(['two-active', 'no-ready-partner', 'unobserved']);
    const rows = laneRows(staff, lanesOf(staff), perUnit);
    expect(rows.map((r) => r.mark)).toEqual([
      'critical',
      'critical-word',
      'warning',
      'warning-word',
      'unobserved',
      'unobserved-word',
      'axis',
    ]);
    const heights = rows.map((r) => r.y);
    expect(heights).toEqual(heights.toSorted((a, b) => b - a));
  });

  test('show a state that is shorter than a unit, and keep their place where a window has none of a kind', () => {
    const lanes = lanesOf({ states });
    const [bar] = laneRows({ ...bare, states }, lanes, perUnit);
    // One second is a sixth of a unit: it is drawn two units wide.
    expect([bar?.x, bar?.x2]).toEqual([minute, minute + 2 * perUnit]);
    const [none, all] = [[], states].map((s) => laneRows({ ...bare, states: s }, lanes, perUnit).at(-1));
    expect(none?.y).toBe(all?.y);
    expect([all?.mark, all?.x, all?.x2]).toEqual(['axis', bare.from, bare.to]);
  });
});
