import { followsSlot } from '../../../src/diagnose/follows-slot.ts';
import { checkCause } from '../../support/check-cause.ts';
import { seededTroubles } from '../../support/seeded-troubles.ts';

checkCause(followsSlot, {
  shows: { name: 'told as a story', files: seededTroubles['follows-slot']?.(41) ?? {}, alone: true },
  lookAlike: {
    name: 'it follows the other of module and slot',
    files: seededTroubles['follows-module']?.(42) ?? {},
    alone: true,
    instead: 'follows-module',
  },
  tooLittle: { name: 'one module, in one half', names: 'load' },
});
