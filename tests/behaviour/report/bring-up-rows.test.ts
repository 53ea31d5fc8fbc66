import { expect, test } from 'vitest';
import { bringUpRows } from '../../../src/report/bring-up-rows.ts';
import type { BringUp, Measure } from '../../../src/vocabulary.ts';
import { exampleVerification } from '../../support/example-verification.ts';

/** The example's good bring-up: ready after 120 s, its light as given. */
function withLight(light: Partial<Measure>): BringUp {
  const [bringUp] = exampleVerification().swaps[0]?.bringUps ?? [];
  if (bringUp === undefined) throw new Error('the example has a bring-up');
  return {
    ...bringUp,
    light: { seconds: 240, low: 240, high: 240, censored: false, outcome: 'within', ...light },
  };
}

test.each<
  [string, Partial<Measure>, { lateFrom: number | null; steady: number | null; end: number; said: string }]
>([
  ['in time', {}, { lateFrom: null, steady: 240, end: 240, said: '' }],
  [
    'came past the limit',
    { seconds: 340, low: 340, high: 340, outcome: 'exceeded' },
    { lateFrom: 300, steady: 340, end: 340, said: 'past the limit' },
  ],
  [
    'never came',
    { seconds: 500, low: 500, high: null, censored: true, outcome: 'exceeded' },
    { lateFrom: 300, steady: null, end: 500, said: 'not steady, past the limit' },
  ],
  [
    'the limit lies within its bounds',
    { seconds: 305, low: 295, high: 305, outcome: 'inconclusive' },
    { lateFrom: null, steady: 305, end: 305, said: 'inconclusive' },
  ],
  [
    'observation ended before the limit',
    { seconds: 150, low: 150, high: null, censored: true, outcome: 'inconclusive' },
    { lateFrom: null, steady: null, end: 150, said: 'observation ended before the limit' },
  ],
  [
    'never logged: the line ends at ready',
    { seconds: null, low: null, high: null, outcome: 'not-observed' },
    { lateFrom: null, steady: null, end: 120, said: 'light not observed' },
  ],
])('a light that is %s', (_, light, { said, ...expected }) => {
  const [row] = bringUpRows([withLight(light)], 300);
  expect(row).toMatchObject({ ...expected, notReadyTo: 120, outcomeWord: said });
});

test('two marks that are close share one word', () => {
  // 400 units for 300 s: 48 units are 36 s.
  const [close] = bringUpRows([withLight({ seconds: 150, low: 150, high: 150 })], 300);
  expect([close?.readyWord, close?.steadyWord]).toEqual(['', 'ready, steady']);
  const [wide] = bringUpRows([withLight({ seconds: 160, low: 160, high: 160 })], 300);
  expect([wide?.readyWord, wide?.steadyWord]).toEqual(['ready', 'steady']);
});

test('without a ready partner the line is drawn to the steady light', () => {
  const unseen = { seconds: null, low: null, high: null, censored: false, outcome: 'not-observed' } as const;
  const [row] = bringUpRows([{ ...withLight({}), ready: null, sync: unseen }], 300);
  expect(row).toMatchObject({ ready: null, notReadyTo: 240, end: 240 });
});

test('a retried reflash has a row of its own', () => {
  const names = bringUpRows([withLight({}), withLight({}), { ...withLight({}), half: 'A' }], 300).map(
    (r) => r.name,
  );
  expect(names).toEqual(['half B, reflash', 'half B, reflash 2', 'half A, reflash']);
});

test('a bring-up of which nothing came is drawn as long as it was watched', () => {
  const watched = { seconds: 500, low: 500, high: null, censored: true, outcome: 'inconclusive' } as const;
  const none = { seconds: null, low: null, high: null, outcome: 'not-observed' } as const;
  const [row] = bringUpRows([{ ...withLight(none), ready: null, sync: watched }], 300);
  expect(row).toMatchObject({ ready: null, notReadyTo: 500, end: 500, lateFrom: null });
});
