import { firmwareWide } from '../../../src/diagnose/firmware-wide.ts';
import { checkCause } from '../../support/check-cause.ts';
import { firmwareFails } from '../../support/module-troubles.ts';

checkCause(firmwareWide, {
  shows: {
    name: 'two other pairs with it have trouble, two without it none',
    files: firmwareFails(41),
    alone: true,
  },
  lookAlike: {
    name: 'pairs with other firmware have as much trouble',
    files: firmwareFails(42, true),
    alone: true,
    instead: 'too-little-data',
  },
  tooLittle: { name: 'the files speak of one pair', names: 'load' },
});
