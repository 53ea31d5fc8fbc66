import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { broughtInto, nearestMs, panned, wheelFactor, windowOf, zoomed } from '../../../web/staff-window.ts';

const year = 365 * 86_400_000;
const whole = { from: 1_000_000, to: 1_000_000 + 2 * year };
const wheel = (deltaY: number, given: Partial<WheelEvent> = {}): number =>
  wheelFactor({ deltaY, deltaX: 0, deltaMode: 0, ctrlKey: false, ...given });

describe('the window of the staff', () => {
  test('zooms about a place that stays where it is', () => {
    // A quarter in: 25 before and 75 after; half of it is 12.5 before and 37.5 after, in units of 100 s.
    expect(zoomed({ from: 2_000_000, to: 12_000_000 }, 0.5, 0.25, whole)).toEqual({
      from: 3_250_000,
      to: 8_250_000,
    });
  });

  test('stays inside the log, and shows no less than ten seconds', () => {
    expect(zoomed(whole, 2, 0.5, whole)).toEqual(whole);
    expect(panned({ from: whole.from, to: whole.from + 1000 }, -0.5, whole).from).toBe(whole.from);
    expect(panned({ from: whole.to - 1000, to: whole.to }, 5, whole).to).toBe(whole.to);
    const { from, to } = zoomed({ from: 2_000_000, to: 2_012_000 }, 0.1, 0.5, whole);
    expect(to - from).toBe(10_000);
    expect(nearestMs).toBe(10_000);
  });

  test('is moved no more than needed to show an instant', () => {
    const shown = { from: 5_000_000, to: 6_000_000 };
    expect(broughtInto(shown, 5_500_000, whole)).toBe(shown);
    expect(broughtInto(shown, 6_200_000, whole)).toEqual({ from: 5_200_000, to: 6_200_000 });
    expect(broughtInto(shown, 4_900_000, whole)).toEqual({ from: 4_900_000, to: 5_900_000 });
  });

  test('is that of a span drawn from either end', () => {
    expect(windowOf(9_000_000, 3_000_000, whole)).toEqual({ from: 3_000_000, to: 9_000_000 });
  });

  test('comes from two years to ten seconds in five spins of a wheel, and stays at the pointer', () => {
    const place = 0.37;
    const target = whole.from + place * (whole.to - whole.from);
    let shown = whole;
    // A spin is eight notches: 1.6 to the eighth is 43, and 43 to the fifth 1.5e8; two years are 6.3e6 times ten seconds.
    for (let spin = 0; spin < 5; spin += 1)
      for (let notch = 0; notch < 8; notch += 1) {
        const at = (target - shown.from) / (shown.to - shown.from);
        shown = zoomed(shown, wheel(-100), at, whole);
      }
    expect(shown.to - shown.from).toBeLessThanOrEqual(nearestMs + 1);
    expect(shown.from).toBeLessThanOrEqual(target);
    expect(shown.to).toBeGreaterThanOrEqual(target);
  });

  test('is whole milliseconds inside the log, whatever is done', () => {
    const moves = fc.array(
      fc.record({
        isZoom: fc.boolean(),
        by: fc.double({ min: 0.01, max: 20, noNaN: true }),
        at: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(moves, (done) => {
        let shown = whole;
        for (const { isZoom, by, at } of done)
          shown = isZoom ? zoomed(shown, by, at, whole) : panned(shown, by - 10, whole);
        expect([Number.isInteger(shown.from), Number.isInteger(shown.to)]).toEqual([true, true]);
        expect(shown.from).toBeGreaterThanOrEqual(whole.from);
        expect(shown.to).toBeLessThanOrEqual(whole.to);
        expect(shown.to - shown.from).toBeGreaterThanOrEqual(nearestMs);
      }),
    );
  });
});

describe('a turn of the wheel', () => {
  test('zooms in upwards and out downwards, one notch by 1.6', () => {
    expect(wheel(-100)).toBeCloseTo(1 / 1.6, 9);
    expect(wheel(100)).toBeCloseTo(1.6, 9);
    // Three lines are a notch, near enough: 99 pixels.
    expect(wheel(3, { deltaMode: 1 })).toBeCloseTo(1.6 ** 0.99, 9);
  });

  test('is read from its sideways part where Shift makes it one', () => {
    expect(wheel(0, { deltaX: -100 })).toBeCloseTo(1 / 1.6, 9);
  });

  test('follows two fingers that move apart, and never leaps', () => {
    expect(wheel(-12, { ctrlKey: true })).toBeCloseTo(1 / 1.6, 9);
    expect(wheel(-5000)).toBe(1 / 2.5);
    expect(wheel(5000)).toBe(2.5);
  });
});
