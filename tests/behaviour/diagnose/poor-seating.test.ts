import { poorSeating } from '../../../src/diagnose/poor-seating.ts';
import { checkCause } from '../../support/check-cause.ts';

/** The minutes before the loss and the three failures of the journal. */
const clocks: readonly string[] = ['06:59', '07:01', '07:09', '07:12'];

function dropsAt(minutes: readonly string[]): readonly string[] {
  return minutes.flatMap((at) => [`${at}:56  RO1    partner absent`, `${at}:59  RO1    partner present`]);
}

checkCause(poorSeating, {
  shows: { name: 'it is out of sight seconds before each failure', plus: dropsAt(clocks) },
  lookAlike: {
    name: 'it is out of sight with each supply fault',
    plus: [
      ...dropsAt(clocks),
      ...clocks.flatMap((at) => [`${at}:55  RO1 B  supply fault`, `${at}:57  RO1 B  supply good`]),
    ],
    instead: 'supply-fault',
  },
  tooLittle: { name: 'it was out of sight once', plus: dropsAt(clocks.slice(0, 1)), names: 'load' },
});
