/** Laws of survival, for any input: no figure is NaN, limits in order, the order of rows irrelevant. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  aalenJohansen,
  bandOf,
  incidenceQuantile,
  type Watched,
} from '../../src/statistics/aalen-johansen.ts';
import { turnbull, turnbullQuantile } from '../../src/statistics/turnbull.ts';
import { expectFigures, expectOrder } from '../support/figures.ts';

const run = { numRuns: 300, seed: 20_261_125 };
const seconds = fc.oneof(fc.integer({ min: 0, max: 20 }), fc.double({ min: 0, max: 1e6, noNaN: true }));
const group = fc.constantFrom('a', 'b', 'c');
const watched = fc.array(fc.record({ seconds, end: fc.constantFrom('ended', 'competing', 'censored') }), {
  maxLength: 30,
});
const intervals = fc.array(
  fc
    .record({ low: seconds, width: fc.oneof(seconds, fc.constantFrom(0, Infinity)), group })
    .map(({ low, width, ...rest }) => ({ low, high: low + width, ...rest })),
  { maxLength: 30 },
);
const share = fc.constantFrom(0.5, 0.95);

describe('survival', () => {
  test('a curve falls from 1 within its limits, whatever the order of rows', () => {
    fc.assert(
      fc.property(watched, share, (sample, part) => {
        const steps = aalenJohansen(sample);
        const bands = steps.map((step) => bandOf(step));
        expectFigures([steps, bands, incidenceQuantile(steps, part)]);
        for (const [index, { surviving }] of steps.entries())
          expectOrder(0, bands[index]?.low, surviving, bands[index]?.high, 1);
        expectOrder(...steps.map((step) => -step.surviving));
        expectOrder(...bands.map((band) => -band.low));
        expectOrder(...bands.map((band) => -band.high));
        const { low, value, high } = incidenceQuantile(steps, part);
        expectOrder(low, value, high);
        expect(aalenJohansen([...sample].reverse())).toEqual(steps);
      }),
      { ...run, numRuns: 100 },
    );
  });

  test('without a censored time the share left is the share that took longer or met a competing end', () => {
    fc.assert(
      fc.property(watched, (all) => {
        const sample = all.filter(({ end }) => end !== 'censored');
        for (const step of aalenJohansen(sample)) {
          const left = sample.filter(
            (time) => time.end === 'competing' || time.seconds > step.seconds,
          ).length;
          if (step.isEnd) expect(step.surviving).toBeCloseTo(left / sample.length, 9);
        }
      }),
      run,
    );
  });

  // As the definition has it: the incidence grows by S * ended / watched, S the share that has met no end of either kind.
  test('a curve is the one that the definition of the incidence gives', () => {
    fc.assert(
      fc.property(watched, (sample) => {
        for (const step of aalenJohansen(sample))
          if (step.isEnd) expect(step.surviving).toBeCloseTo(1 - incidenceBy(sample, step.seconds), 9);
      }),
      run,
    );
  });

  test('places of intervals hold 1 together, each interval some of it', () => {
    fc.assert(
      fc.property(intervals, share, (sample, part) => {
        const { places, reach } = turnbull(sample);
        expectFigures([places, turnbullQuantile(places, part)]);
        const total = places.reduce((sum, { probability }) => sum + probability, 0);
        expect(total).toBeCloseTo(sample.length === 0 ? 0 : 1, 6);
        for (const [first, last] of reach) {
          const held = places.slice(first, last + 1).reduce((sum, { probability }) => sum + probability, 0);
          expect(held).toBeGreaterThan(0.9 / sample.length);
        }
      }),
      run,
    );
  });

  // Gentleman and Geyer, Biometrika 81 (1994): it is the maximum if no place would gain, that is if the inverse shares of
  // the intervals that hold a place add up to their number at most (from memory). Tolerance: 0.1 %, as the rounds end.
  test('no other places would make the intervals more likely', () => {
    fc.assert(
      fc.property(intervals, (sample) => {
        const { places, reach } = turnbull(sample);
        const held = reach.map(([first, last]) =>
          places.slice(first, last + 1).reduce((sum, { probability }) => sum + probability, 0),
        );
        for (const index of places.keys()) {
          const inverse = reach.map(([first, last], i) =>
            first <= index && index <= last ? 1 / (held[i] ?? 0) : 0,
          );
          const gain = inverse.reduce((sum, weight) => sum + weight, 0) / sample.length;
          expect(gain).toBeLessThan(1.001);
        }
      }),
      run,
    );
  });

  test('intervals that are points or censored give the same curve, with competing ends too', () => {
    fc.assert(
      fc.property(watched, (sample) => {
        const exact = sample
          .filter(({ end }) => end !== 'competing')
          .map(({ seconds: low, end }) => ({ low, high: end === 'censored' ? Infinity : low }));
        const competing = sample.flatMap((time) => (time.end === 'competing' ? [time.seconds] : []));
        const { places } = turnbull(exact, competing);
        for (const step of aalenJohansen(sample)) {
          if (!step.isEnd) continue;
          const place = places.find(({ low, high }) => low === step.seconds && high === step.seconds);
          expect(Math.abs((place?.survivingAfter ?? Infinity) - step.surviving)).toBeLessThan(1e-5);
        }
      }),
      run,
    );
  });
});

function incidenceBy(sample: readonly Watched[], until: number): number {
  let [free, incidence] = [1, 0];
  for (const at of [...new Set(sample.map((time) => time.seconds))].sort((a, b) => a - b)) {
    if (at > until) break;
    const still = sample.filter((time) => time.seconds >= at).length;
    const endsThen = (end: Watched['end']): number =>
      sample.filter((time) => time.seconds === at && time.end === end).length;
    incidence += (free * endsThen('ended')) / still;
    free *= 1 - (endsThen('ended') + endsThen('competing')) / still;
  }
  return incidence;
}
