import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reducedStaff, staffBetween } from '../../../src/report/reduced-staff.ts';
import { staffRows } from '../../../src/report/staff-rows.ts';
import type { Staff, StaffStretch } from '../../../src/vocabulary.ts';

const columns = 660;
const second = 1000;

/** A staff of two years in which half B is lost for a second at each of these seconds, and restarted then. */
function flappingStaff(losses: readonly number[]): Staff {
  const to = 2 * 365 * 86_400 * second;
  const times = [...new Set(losses)].sort((a, b) => a - b).map((s) => s * second);
  const edges = [0, ...times.flatMap((t) => [t, t + second]), to];
  const stretches = edges.slice(0, -1).flatMap((from, index): StaffStretch[] => {
    const end = edges[index + 1] ?? to;
    return end <= from ? [] : [{ half: 'B', from, to: end, drawn: index % 2 === 0 ? 'ready' : 'not-ready' }];
  });
  return {
    from: 0,
    to,
    limitSeconds: 300,
    halves: ['A', 'B'],
    stretches: [{ half: 'A', from: 0, to, drawn: 'active' }, ...stretches],
    lights: times.map((t) => ({ half: 'B', light: 'flashing' as const, from: t, to: t + second })),
    ticks: times.map((t) => ({ time: t, earliest: t, half: 'B', word: 'restart' })),
    switchovers: [],
    bringUps: times.map((t) => ({ half: 'B', from: t, to: t + second, flag: t + 300 * second, late: false })),
    unobserved: [],
    states: times.map((t) => ({
      kind: 'no-ready-partner' as const,
      half: null,
      from: t,
      to: t + second,
      seconds: 1,
      count: 1,
      losses: 0,
      goesOn: false,
    })),
  };
}

describe('the reduced staff', () => {
  test('shows every loss and every happening in its column, in a few thousand marks however many there are', () => {
    const seconds = fc.array(
      fc.integer({ min: 1, max: 2 * 365 * 86_400 - 10 }).map((s) => (s * 2) % (2 * 365 * 86_400 - 10)),
      {
        minLength: 1,
        maxLength: 5000,
      },
    );
    fc.assert(
      fc.property(seconds, (losses) => {
        const staff = flappingStaff(losses);
        const reduced = reducedStaff(staff, columns);
        const unit = staff.to / columns;
        for (const { from, to } of staff.stretches.filter((s) => s.drawn === 'not-ready')) {
          const isSeen = reduced.stretches.some(
            (s) => s.drawn === 'not-ready' && s.from <= to && s.to >= from,
          );
          expect(isSeen).toBe(true);
        }
        for (const { time } of staff.ticks)
          expect(reduced.ticks.some((t) => Math.abs(t.time - time) <= unit)).toBe(true);
        expect(staffRows(reduced, 'UTC').length).toBeLessThan(10 * columns);
      }),
      { numRuns: 20 },
    );
  });

  test('counts the happenings that one tick stands for', () => {
    const day = 86_400;
    const { ticks } = reducedStaff(flappingStaff([day, day + 10, day + 20, 300 * day]), columns);
    // Two years in 660 columns: a column is 26.5 hours.
    expect(ticks.map((t) => t.word)).toEqual(['restart, 3 times', 'restart']);
  });

  test('counts the states that one bar stands for, and adds up how long they were', () => {
    const day = 86_400;
    const { states } = reducedStaff(flappingStaff([day, day + 10, day + 20, 300 * day]), columns);
    expect(states.map((s) => [s.count, s.seconds, s.from / second])).toEqual([
      [3, 3, day],
      [1, 1, 300 * day],
    ]);
  });

  test('keeps a late bring-up before others of its column', () => {
    const staff = flappingStaff([1000, 1010]);
    const late = { half: 'B', from: 1020 * second, to: 2000 * second, flag: 1320 * second, late: true };
    expect(reducedStaff({ ...staff, bringUps: [...staff.bringUps, late] }, columns).bringUps).toEqual([late]);
  });

  test('leaves a short staff as it is', () => {
    const staff = staffBetween(flappingStaff([100, 200]), 0, 600 * second);
    expect(reducedStaff(staff, columns)).toEqual(staff);
  });
});

describe('a part of the staff', () => {
  test('shows a bring-up that began before it, without a corner where it did not begin', () => {
    const late = { half: 'B', from: 100 * second, to: 900 * second, flag: 400 * second, late: true };
    const staff = { ...flappingStaff([100]), bringUps: [late] };
    const part = staffBetween(staff, 500 * second, 1000 * second);
    expect(part.bringUps).toEqual([late]);
    const drawn = staffRows(part, 'UTC').filter((r) => ['bracket', 'late', 'flag'].includes(r.mark));
    // All of it is past the flag: what is late, and the corner where it ended.
    expect(drawn.filter((r) => r.x2 > r.x).map((r) => [r.mark, r.x / second, r.x2 / second])).toEqual([
      ['late', 500, 900],
    ]);
    expect(drawn.filter((r) => r.y2 !== r.y).map((r) => r.x / second)).toEqual([900]);
  });

  test('is cut at its ends, and holds what lies between them', () => {
    const part = staffBetween(flappingStaff([100, 200, 300]), 150 * second, 250 * second);
    expect(part.stretches.map((s) => [s.half, s.from / second, s.to / second, s.drawn])).toEqual([
      ['A', 150, 250, 'active'],
      ['B', 150, 200, 'ready'],
      ['B', 200, 201, 'not-ready'],
      ['B', 201, 250, 'ready'],
    ]);
    expect(part.ticks.map((t) => t.time / second)).toEqual([200]);
    expect(part.bringUps.map((b) => b.from / second)).toEqual([200]);
  });
});
