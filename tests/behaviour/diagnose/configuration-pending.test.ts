import { expect, test } from 'vitest';
import { configurationPending } from '../../../src/diagnose/configuration-pending.ts';
import { checkCause, diagnoseCase } from '../../support/check-cause.ts';

/**
 * Three attempts failed, and once the partner was ready. So at all of the failed ones and at none of the ready: (3.5 / 4) to
 * (0.5 / 2) is 3.5 to 1, which is 5.4 decibans, and what the state weighs before any count.
 */
checkCause(configurationPending, {
  shows: {
    name: 'it waits to be sent all the while',
    plus: ['06:59:50  RO1    configuration pending'],
    for: [
      'A configuration is pending. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: [],
    decibans: 11.4,
    lines: ['06:59:50 RO1 configuration pending'],
  },
  lookAlike: {
    name: 'it was sent before the first attempt failed',
    plus: ['06:59:50  RO1    configuration pending', '07:00:30  RO1    configuration current'],
    instead: 'too-little-data',
    against: ['No configuration is pending.'],
    lines: ['07:00:30 RO1 configuration current'],
  },
  tooLittle: { name: 'the configuration is not logged', without: ['configuration'], names: 'configuration' },
});

test('that was pending at one failure only is told with what speaks against it', async () => {
  const { causes } = await diagnoseCase({
    name: '',
    plus: ['07:05:00  RO1    configuration pending', '07:10:00  RO1    configuration current'],
  });
  const found = causes.find((c) => c.id === configurationPending.meta.id);
  // (1.5 / 4) to (0.5 / 2) is 1.5 to 1: 1.8 decibans, and 6 before any count.
  expect(found?.decibans).toBe(7.8);
  expect(found?.for.map((p) => p.statement)).toEqual([
    'When an attempt last failed: a configuration is pending. This was so at 1 of 3 failed attempts and at 0 of 1 time with a ready partner.',
  ]);
  expect(found?.against.map((p) => p.statement)).toEqual([
    'At the end of the log: no configuration is pending.',
    'Attempts failed without a pending configuration: 2 times.',
  ]);
});
