import { configurationPending } from '../../../src/diagnose/configuration-pending.ts';
import { checkCause } from '../../support/check-cause.ts';

checkCause(configurationPending, {
  shows: { name: 'it waits to be sent all the while', plus: ['06:59:50  RO1    configuration pending'] },
  lookAlike: {
    name: 'it was sent before the first attempt failed',
    plus: ['06:59:50  RO1    configuration pending', '07:00:30  RO1    configuration current'],
    instead: 'too-little-data',
  },
  tooLittle: { name: 'the configuration is not logged', without: ['configuration'], names: 'configuration' },
});
