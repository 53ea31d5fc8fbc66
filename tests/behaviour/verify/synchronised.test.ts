import { synchronised } from '../../../src/verify/synchronised.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  synchronised,
  {
    says: 'Half B was ready 2 min 00 s after its reflash, and that held (settled).',
    lines: ['09:05:00 RO1 B reflash end', '09:07:00 RO1 partner ready'],
  },
  [
    {
      name: 'ready only after sixteen minutes',
      status: 'fail',
      without: ['09:07:00', '09:20'],
      plus: ['09:21:00  RO1  partner ready'],
      says: 'Half B was ready 16 min 00 s after its reflash, and that held (settled).',
      lines: ['09:05:00 RO1 B reflash end', '09:21:00 RO1 partner ready'],
    },
    {
      name: 'ready after fifteen minutes',
      status: 'pass',
      without: ['09:07:00', '09:20'],
      plus: ['09:20:00  RO1  partner ready'],
      says: 'Half B was ready 15 min 00 s after its reflash, and that held (settled).',
      lines: ['09:05:00 RO1 B reflash end', '09:20:00 RO1 partner ready'],
    },
    {
      name: 'never ready, watched for forty minutes',
      status: 'fail',
      without: ['09:07:00', '09:20'],
      says: 'Half B was never ready in the 40 min 00 s it was watched.',
      lines: ['09:05:00 RO1 B reflash end', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'ready, but lost after half a minute',
      status: 'fail',
      without: ['09:20'],
      plus: ['09:07:30  RO1  partner not ready'],
      says: 'Half B became ready but did not stay so.',
      lines: ['09:05:00 RO1 B reflash end', '09:07:00 RO1 partner ready'],
    },
    {
      name: 'the log ends before fifteen minutes',
      status: 'inconclusive',
      without: ['09:07:00', '09:09:00', '09:20', '09:45'],
      plus: ['09:12:00  RO1  configuration current'],
      says: 'Half B was not ready when the watch on it ended after 7 min 00 s.',
      lines: ['09:05:00 RO1 B reflash end', '09:12:00 RO1 configuration current'],
    },
    {
      name: 'readiness is never logged',
      status: 'not-observed',
      without: ['partner'],
      says: 'Whether half B became ready was never logged.',
      lines: ['09:05:00 RO1 B reflash end', '09:45:00 RO1 configuration current'],
    },
  ],
);
