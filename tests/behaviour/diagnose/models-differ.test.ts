import { expect, test } from 'vitest';
import { modelsDiffer } from '../../../src/diagnose/models-differ.ts';
import { checkCause, toldOf } from '../../support/check-cause.ts';

/**
 * Three attempts failed, and once the partner was ready. So at all of the failed ones and at none of the ready: (3.5 / 4) to
 * (0.5 / 2) is 3.5 to 1, which is 5.4 decibans, and what the state weighs before any count.
 */
checkCause(modelsDiffer, {
  shows: {
    name: 'another model came in when the partner was lost',
    plus: ['06:59:59  RO1 B  model Tern-2'],
    for: [
      'Half B is a Tern-2, half A a Tern-4. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: [],
    decibans: 11.4,
    lines: ['06:59:59 RO1 B model Tern-2', '06:00:00 RO1 A model Tern-4'],
  },
  lookAlike: {
    name: 'the two models were ready together before',
    without: ['RO1 B  model'],
    plus: ['06:00:00  RO1 B  model Tern-2'],
    instead: 'too-little-data',
    // (3.5 / 4) to (1.5 / 2) is 1.17 to 1: 0.7 decibans.
    for: [
      'Half B is a Tern-2, half A a Tern-4. This was so at 3 of 3 failed attempts and at 1 of 1 time with a ready partner.',
    ],
    against: ['A partner was ready in spite of models that differ: 1 time.'],
    decibans: 6.7,
  },
  tooLittle: { name: 'no model is logged', without: ['model'], names: 'model' },
});

test('halves of one model are said to be', async () => {
  expect(await toldOf({}, 'models-differ')).toEqual(['doubted', 'Both halves are Tern-4.']);
});
