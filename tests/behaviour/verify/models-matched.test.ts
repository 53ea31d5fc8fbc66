import { modelsMatched } from '../../../src/verify/models-matched.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(modelsMatched, [
  {
    name: 'another model came in, and the plan has no other half',
    status: 'fail',
    without: ['09:02:00  RO1 B  model'],
    plus: ['09:02:00  RO1 B  model Tern-3'],
    job: { plan: { RO1: { B: {} } } },
  },
  {
    name: 'another model came in, and the other half may follow within a day',
    status: 'inconclusive',
    without: ['09:02:00  RO1 B  model'],
    plus: ['09:02:00  RO1 B  model Tern-3'],
  },
  {
    name: 'both alike, but another was planned',
    status: 'fail',
    job: { plan: { RO1: { B: { model: 'Tern-5' } } } },
  },
  { name: 'both alike and as planned', status: 'pass', job: { plan: { RO1: { B: { model: 'Tern-4' } } } } },
  { name: 'the model of one half is not known', status: 'inconclusive', without: ['A  model'] },
  { name: 'models are never logged', status: 'not-observed', without: ['model Tern'] },
]);
