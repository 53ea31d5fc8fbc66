/** Shifts of a clock that are given up early are those that bring fewer changes together than another. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Matched, matched, shiftsOf, tellingsOf } from '../../src/timeline/clock-matches.ts';
import { readText } from '../support/read-text.ts';

const messages = ['RO1-A,light steady', 'RO1-A,light off', 'RO1-B,link a up', 'RO1,partner ready'];
const entries = fc.array(fc.tuple(fc.nat(900), fc.constantFrom(...messages)), {
  minLength: 1,
  maxLength: 30,
});

function journal(rows: readonly (readonly [number, string])[], lateBy: number): string {
  const stamped = rows.map(([second, message]) => {
    const time = new Date(Date.UTC(2026, 2, 14, 9) + (second + lateBy) * 1000).toISOString();
    return `${time},${message}`;
  });
  return ['time,unit,message', ...stamped, ''].join('\n');
}

test('the shift under which most changes are in both is found, and of several the first', async () => {
  let found = 0;
  await fc.assert(
    fc.asyncProperty(entries, entries, fc.nat(60), fc.boolean(), async (rows, others, lateBy, isSame) => {
      const base = await readText('a.csv', journal(rows, 0));
      const file = await readText(
        'b.csv',
        journal(isSame ? rows.slice(1).concat(others.slice(0, 3)) : others, lateBy),
      );
      const [own, known] = [tellingsOf(file), tellingsOf(base)];
      const shifts = shiftsOf(own, known);
      // Alone each is gone through to its end.
      const each = shifts.map((shift) => matched(own, known, [shift], 2000));
      const most = each.reduce<readonly Matched[]>(
        (best, one) => (one.length > best.length ? one : best),
        [],
      );
      if (most.length > 0) found += 1;
      expect(matched(own, known, shifts, 2000)).toEqual(most);
    }),
    { numRuns: 300, seed: 31 },
  );
  expect(found).toBeGreaterThan(100);
}, 120_000);
