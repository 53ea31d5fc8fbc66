import { lossTrend, rateChange } from './loss-changes.ts';
import { curveLimits, groupChanges, groupsApart, groupsDiffer, ratioLimits } from './loss-groups.ts';
import { falseOnes, power, standsOut } from './stands-out.ts';
import type { Study } from './study.ts';

/** Every study, in the order of the table. */
export const studies: readonly Study[] = [
  standsOut,
  falseOnes,
  power,
  lossTrend,
  rateChange,
  groupsDiffer,
  groupsApart,
  groupChanges,
  ratioLimits,
  curveLimits,
];
