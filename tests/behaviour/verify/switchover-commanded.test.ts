import { switchoverCommanded } from '../../../src/verify/switchover-commanded.ts';
import { checkCheck } from '../../support/check-check.ts';
import { journalText } from '../../support/read-text.ts';

/** Who left, and who took over. */
const roles = ['09:20:01 RO1 A role standby', '09:20:01.1 RO1 B role active'];

checkCheck(
  switchoverCommanded,
  {
    says: 'The switchover to half B was commanded.',
    lines: [...roles, '09:20:00 RO1 switchover command', '09:07:00 RO1 partner ready'],
  },
  [
    {
      name: 'the command came after the switchover',
      status: 'fail',
      without: ['command'],
      plus: ['09:30:00  RO1  switchover command'],
      says: 'The switchover to half B was not commanded.',
      lines: [...roles, '09:07:00 RO1 partner ready'],
    },
    {
      name: 'no switchover in the swap',
      status: 'pass',
      without: ['09:20:01'],
      says: 'None: no switchover was logged in this swap.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'commanded, and no line states a role or a switchover',
      status: 'inconclusive',
      without: ['role'],
      says: 'A switchover was commanded; whether it came was not logged.',
      lines: ['09:20:00 RO1 switchover command'],
    },
    {
      // Ready at 09:07, so that the swap ends at 09:37:00, at which the minute of the note begins.
      name: 'noted in the minute in which the swap ends, and no line states a role or a switchover',
      status: 'inconclusive',
      without: ['role', 'command'],
      files: { 'notes.txt': 'Pair RO1\n2026-03-14\n09:37 switched over\n' },
      says: 'A switchover was commanded; whether it came was not logged.',
      lines: ['09:37 switched over'],
    },
    {
      name: 'no log ever records a command',
      status: 'not-observed',
      without: ['command'],
      says: 'No log that records switchover commands names this pair.',
      lines: [...roles, '09:07:00 RO1 partner ready'],
    },
    {
      name: 'only a log that does not name this pair records commands',
      status: 'not-observed',
      without: ['command'],
      files: { 'other.log': journalText('09:20:00 RO9 switchover command\n09:30:00 RO9 A link a up') },
      says: 'No log that records switchover commands names this pair.',
      lines: [...roles, '09:07:00 RO1 partner ready'],
    },
    {
      name: 'a log that names this pair records a command of another, half a minute before and until the switchover',
      status: 'fail',
      without: ['command'],
      files: { 'other.log': journalText('09:19:31 RO9 switchover command\n09:20:01 RO1 A link a up') },
      says: 'The switchover to half B was not commanded.',
      lines: [...roles, '09:07:00 RO1 partner ready'],
    },
    {
      name: 'a log that names this pair records a command, but ends before the switchover',
      status: 'inconclusive',
      without: ['command'],
      files: { 'other.log': journalText('09:10:00 RO9 switchover command\n09:20:00 RO1 A link a up') },
      says: 'Whether the switchover to half B was commanded is not known: the log that records commands does not cover it.',
      lines: [...roles, '09:07:00 RO1 partner ready'],
    },
  ],
);
