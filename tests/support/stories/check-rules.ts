import { configurationCurrent, linksRestored, modelsMatched, nothingAtFault } from './rules-at-end.ts';
import { baselineRedundant, notFlapping, readyBeforeSwitchover, soaked } from './rules-of-partner.ts';
import {
  firmwareMatched,
  identifiedStandby,
  lightSteady,
  neverWithoutActive,
  oneHalfAtATime,
  removedStandby,
  switchoverCommanded,
  synchronised,
} from './rules-of-work.ts';
import type { SwapFacts } from './swap-facts.ts';
import type { Verity } from './verity.ts';

/** When each check of a swap truly holds. Source: design.md, section 5; none shares code with the program. */
export const checkRules = {
  'baseline-redundant': baselineRedundant,
  'removed-standby': removedStandby,
  'one-half-at-a-time': oneHalfAtATime,
  'identified-standby': identifiedStandby,
  'firmware-matched': firmwareMatched,
  synchronised,
  'light-steady': lightSteady,
  'ready-before-switchover': readyBeforeSwitchover,
  'switchover-commanded': switchoverCommanded,
  'never-without-active': neverWithoutActive,
  'links-restored': linksRestored,
  'models-matched': modelsMatched,
  'configuration-current': configurationCurrent,
  'not-flapping': notFlapping,
  'nothing-at-fault': nothingAtFault,
  soaked,
} as const satisfies Readonly<Record<string, (facts: SwapFacts) => Verity>>;

export type CheckId = keyof typeof checkRules;
