import { modelsMatched } from '../../../src/verify/models-matched.ts';
import { checkCheck } from '../../support/check-check.ts';

/** The log goes on for more than a day: what was awaited for a day is not awaited any more. */
const nextDay = { 'later.log': '2026-03-15T10:00:00.000Z RO1 configuration current\n' };

checkCheck(
  modelsMatched,
  {
    says: 'At the end both halves report model Tern-4.',
    lines: ['08:40:00 RO1 A model Tern-4', '09:02:00 RO1 B model Tern-4'],
  },
  [
    {
      name: 'another model came in, and the second half did not follow in a day',
      status: 'fail',
      without: ['09:02:00  RO1 B  model'],
      plus: ['09:02:00  RO1 B  model Tern-3'],
      files: nextDay,
      says: 'At the end the models differ: half A Tern-4, half B Tern-3.',
      lines: ['08:40:00 RO1 A model Tern-4', '09:02:00 RO1 B model Tern-3'],
    },
    {
      name: 'another model came in, and the second half is awaited',
      status: 'inconclusive',
      without: ['09:02:00  RO1 B  model'],
      plus: ['09:02:00  RO1 B  model Tern-3'],
      says: 'The swap is still open. So far: at the end the models differ: half A Tern-4, half B Tern-3.',
      lines: ['08:40:00 RO1 A model Tern-4', '09:02:00 RO1 B model Tern-3'],
    },
    {
      name: 'another model came in, as was planned for that half alone',
      status: 'fail',
      without: ['09:02:00  RO1 B  model'],
      plus: ['09:02:00  RO1 B  model Tern-3'],
      job: { plan: { RO1: { B: { model: 'Tern-3' } } } },
      says: 'At the end the models differ: half A Tern-4, half B Tern-3.',
      lines: ['08:40:00 RO1 A model Tern-4', '09:02:00 RO1 B model Tern-3'],
    },
    {
      name: 'both alike, but another was planned',
      status: 'fail',
      job: { plan: { RO1: { B: { model: 'Tern-5' } } } },
      says: 'Half B reports model Tern-4; Tern-5 was planned.',
      lines: ['08:40:00 RO1 A model Tern-4', '09:02:00 RO1 B model Tern-4'],
    },
    {
      name: 'both alike and as planned',
      status: 'pass',
      job: { plan: { RO1: { B: { model: 'Tern-4' } } } },
      says: 'At the end both halves report model Tern-4.',
      lines: ['08:40:00 RO1 A model Tern-4', '09:02:00 RO1 B model Tern-4'],
    },
    {
      name: 'the model of one half is not known',
      status: 'inconclusive',
      without: ['A  model'],
      says: 'The model of half A at the end is not known.',
      lines: ['09:02:00 RO1 B model Tern-4'],
    },
    {
      name: 'the model of one half is not known, but was planned, a day ago',
      status: 'inconclusive',
      without: ['A  model'],
      files: nextDay,
      job: { plan: { RO1: { A: { model: 'Tern-4' } } } },
      says: 'The model of half A at the end is not known.',
      lines: ['09:02:00 RO1 B model Tern-4'],
    },
    {
      name: 'models are never logged',
      status: 'not-observed',
      without: ['model Tern'],
      says: 'The model was never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
  ],
);
