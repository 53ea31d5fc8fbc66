import type { Fault } from './fault.ts';
import { faultsOfBringUp } from './faults-of-bring-up.ts';
import { faultsOfRemoval } from './faults-of-removal.ts';
import { faultsOfSoak } from './faults-of-soak.ts';
import { faultsOfSwitchover } from './faults-of-switchover.ts';

/** Every way in which a story departs from the work as it should be, in the order of the work. */
export const faults: readonly Fault[] = [
  ...faultsOfRemoval,
  ...faultsOfBringUp,
  ...faultsOfSwitchover,
  ...faultsOfSoak,
];
