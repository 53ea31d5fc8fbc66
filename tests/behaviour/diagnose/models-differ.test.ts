import { modelsDiffer } from '../../../src/diagnose/models-differ.ts';
import { checkCause } from '../../support/check-cause.ts';

checkCause(modelsDiffer, {
  shows: { name: 'another model came in when the partner was lost', plus: ['06:59:59  RO1 B  model Tern-2'] },
  lookAlike: {
    name: 'the two models were ready together before',
    without: ['RO1 B  model'],
    plus: ['06:00:00  RO1 B  model Tern-2'],
    instead: 'too-little-data',
  },
  tooLittle: { name: 'no model is logged', without: ['model'], names: 'model' },
});
