import { modelsMatched } from '../../../src/verify/models-matched.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  modelsMatched,
  {
    says: 'At the end both halves report model Tern-4.',
    lines: ['08:40:00 RO1 A model Tern-4', '09:02:00 RO1 B model Tern-4'],
  },
  [
    {
      name: 'another model came in',
      status: 'fail',
      without: ['09:02:00  RO1 B  model'],
      plus: ['09:02:00  RO1 B  model Tern-3'],
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
      name: 'the model of one half is not known, but was planned',
      status: 'inconclusive',
      without: ['A  model'],
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
