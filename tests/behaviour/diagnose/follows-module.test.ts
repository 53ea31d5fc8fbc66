import { followsModule } from '../../../src/diagnose/follows-module.ts';
import { checkCause } from '../../support/check-cause.ts';
import { badModule, badSlot } from '../../support/module-journals.ts';

checkCause(followsModule, {
  shows: { name: 'told by a swap test', files: badModule, alone: true },
  lookAlike: {
    name: 'it follows the other of module and slot',
    files: badSlot,
    alone: true,
    instead: 'follows-slot',
  },
  tooLittle: { name: 'one module, in one half', names: 'load' },
});
