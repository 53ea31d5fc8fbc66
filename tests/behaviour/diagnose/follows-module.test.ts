import { followsModule } from '../../../src/diagnose/follows-module.ts';
import { checkCause } from '../../support/check-cause.ts';
import { seededTroubles } from '../../support/seeded-troubles.ts';

checkCause(followsModule, {
  shows: { name: 'told as a story', files: seededTroubles['follows-module']?.(41) ?? {}, alone: true },
  lookAlike: {
    name: 'it follows the other of module and slot',
    files: seededTroubles['follows-slot']?.(42) ?? {},
    alone: true,
    instead: 'follows-slot',
  },
  tooLittle: { name: 'one module, in one half', names: 'load' },
});
