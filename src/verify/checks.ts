import { baselineRedundant } from './baseline-redundant.ts';
import type { Check } from './check.ts';
import { configurationCurrent } from './configuration-current.ts';
import { firmwareMatched } from './firmware-matched.ts';
import { identifiedStandby } from './identified-standby.ts';
import { lightSteady } from './light-steady.ts';
import { linksRestored } from './links-restored.ts';
import { modelsMatched } from './models-matched.ts';
import { neverWithoutActive } from './never-without-active.ts';
import { notFlapping } from './not-flapping.ts';
import { nothingAtFault } from './nothing-at-fault.ts';
import { oneHalfAtATime } from './one-half-at-a-time.ts';
import { readyBeforeSwitchover } from './ready-before-switchover.ts';
import { removedStandby } from './removed-standby.ts';
import { soaked } from './soaked.ts';
import { switchoverCommanded } from './switchover-commanded.ts';
import { synchronised } from './synchronised.ts';

/** All checks of a swap, in the order of the work. */
export const checks: readonly Check[] = [
  baselineRedundant,
  removedStandby,
  oneHalfAtATime,
  identifiedStandby,
  firmwareMatched,
  synchronised,
  lightSteady,
  readyBeforeSwitchover,
  switchoverCommanded,
  neverWithoutActive,
  linksRestored,
  modelsMatched,
  configurationCurrent,
  notFlapping,
  nothingAtFault,
  soaked,
];
