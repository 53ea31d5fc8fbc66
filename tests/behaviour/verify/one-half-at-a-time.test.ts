import { oneHalfAtATime } from '../../../src/verify/one-half-at-a-time.ts';
import { checkCheck } from '../../support/check-check.ts';

/** Half A is replaced too: pulled at a time, and another serial in its place at 09:30. */
const halfA = (pulled: string): readonly string[] => [
  '08:40:00 RO1 A  serial T2-9',
  `${pulled}  RO1 A  module removed`,
  '09:30:00  RO1 A  module inserted',
  '09:30:00  RO1 A  serial T4-9',
];
const halfB = ['09:00:00 RO1 B module removed', '09:02:00 RO1 B module inserted'];

checkCheck(oneHalfAtATime, { says: 'Only half B was replaced.', lines: halfB }, [
  {
    name: 'the second was pulled while the first was out',
    status: 'fail',
    plus: halfA('09:01:00'),
    says: 'Half A was removed while half B was still out.',
    lines: [...halfB, '09:01:00 RO1 A module removed'],
  },
  {
    name: 'the second was pulled before the first had settled',
    status: 'fail',
    plus: halfA('09:06:00'),
    says: 'Half A was removed before half B had settled.',
    lines: [...halfB, '09:06:00 RO1 A module removed'],
  },
  {
    name: 'the second was pulled after the first had settled',
    status: 'pass',
    plus: halfA('09:22:00'),
    says: 'Half A was removed only after half B had settled.',
    lines: [...halfB, '09:22:00 RO1 A module removed'],
  },
  {
    name: 'whether the first had settled is never logged',
    status: 'not-observed',
    without: ['partner'],
    plus: halfA('09:22:00'),
    says: 'Whether half B had settled was never logged.',
    lines: ['09:22:00 RO1 A module removed'],
  },
]);
