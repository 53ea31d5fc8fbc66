import { followsSlot } from '../../../src/diagnose/follows-slot.ts';
import { checkCause } from '../../support/check-cause.ts';
import { badModule, badSlot } from '../../support/module-journals.ts';

checkCause(followsSlot, {
  shows: { name: 'told by a swap test', files: badSlot, alone: true },
  lookAlike: {
    name: 'it follows the other of module and slot',
    files: badModule,
    alone: true,
    instead: 'follows-module',
  },
  tooLittle: { name: 'one module, in one half', names: 'load' },
});
