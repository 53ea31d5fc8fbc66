import { describe, expect, test } from 'vitest';
import { defaultFleetLimits } from '../../../src/fleet/limits.ts';
import { syncDrifts } from '../../../src/fleet/over-time.ts';
import type { BringUp, SyncDrift } from '../../../src/vocabulary.ts';
import { type MadeBringUp, madeBringUp } from '../../support/made-bring-ups.ts';

const dayMs = 86_400_000;
/** One bring-up a day, each with its seconds. */
const daily = (seconds: readonly number[], made: Partial<MadeBringUp> = {}): readonly BringUp[] =>
  seconds.map((one, day) => madeBringUp({ start: day * dayMs, seconds: one, ...made }));
const drifts = (attempts: readonly BringUp[]): readonly SyncDrift[] =>
  syncDrifts(attempts, (a) => a.firmware, defaultFleetLimits);
const outsideOf = (drift: SyncDrift | undefined): number =>
  drift?.points.filter((p) => p.isOutside).length ?? -1;
/** In turn 80 and 84 s: the average stays within 2 s of 82 s whatever comes next. */
const steady = Array.from({ length: 24 }, (_, index) => (index % 2 === 0 ? 80 : 84));
/** From the thirteenth on 40 s more. */
const raised = steady.map((seconds, index) => (index < 12 ? seconds : seconds + 40));

describe('sync times over time', () => {
  test('that take longer from some day on drift, to the end', () => {
    const [drift] = drifts(daily(raised));
    expect(drift?.target).toBe(82);
    expect(drift?.points.at(-1)?.isOutside).toBe(true);
    // Twelve in a row after the raise: the last average has 0.9^12 = 28 % of what was before left in it, 40 s less 11 s.
    expect(drift?.points.at(-1)?.average).toBeGreaterThan(82 + 27);
    expect(drift?.points.at(-1)?.average).toBeLessThan(82 + 31);
    expect(drift?.points.slice(0, 12).some((p) => p.isOutside)).toBe(false);
  });
  test('that go up and down in turn do not', () => {
    expect(outsideOf(drifts(daily(steady))[0])).toBe(0);
  });
  // Were the 30 min anywhere else among the times, the average would stray as far: the order says nothing.
  test('of which one took half an hour do not', () => {
    const once = steady.map((seconds, index) => (index === 20 ? 1800 : seconds));
    expect(outsideOf(drifts(daily(once))[0])).toBe(0);
  });
  test('are taken in the order of their starts, whatever the order they are told in', () => {
    expect(drifts(daily(raised).toReversed())).toEqual(drifts(daily(raised)));
  });
  test('are told apart by group and cause', () => {
    const both = [
      ...daily(raised, { firmware: '6.2.0' }),
      ...daily(steady),
      ...daily(steady, { cause: 'restart' }),
    ];
    expect(drifts(both).map((d) => [d.group, d.cause, outsideOf(d) > 0])).toEqual([
      ['6.2.0', 'reflash', true],
      ['6.4.1', 'reflash', false],
      ['6.4.1', 'restart', false],
    ]);
  });
  test('are not judged by fewer than twenty that are known to the second', () => {
    const odd = [
      ...daily([90], { isCensored: true, start: 100 * dayMs }),
      ...daily([90], { high: 100, start: 101 * dayMs }),
    ];
    expect(drifts([...daily(steady.slice(0, 19)), ...odd])).toEqual([]);
    expect(drifts([...daily(steady.slice(0, 20)), ...odd]).map((d) => d.points.length)).toEqual([20]);
  });
  test('have wider limits the more groups are looked at', () => {
    const many = Array.from({ length: 10 }, (_, index) => daily(raised, { firmware: `6.${index}` })).flat();
    const [alone, among] = [drifts(daily(raised)), drifts(many)].map(
      (d) => (d[0]?.high ?? 0) - (d[0]?.target ?? 0),
    );
    expect(among).toBeGreaterThan(alone ?? 0);
  });
});
