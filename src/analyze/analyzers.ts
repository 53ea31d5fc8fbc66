import { agreement } from './agreement.ts';
import type { Analyzer } from './analyzer.ts';
import { dataQuality } from './data-quality.ts';
import { exposure } from './exposure.ts';
import { flapping } from './flapping.ts';
import { roleConflicts } from './role-conflicts.ts';
import { stableLight } from './stable-light.ts';
import { switchovers } from './switchovers.ts';
import { syncTime } from './sync-time.ts';

/** All analyzers, in the order in which their findings are told. */
export const analyzers: readonly Analyzer[] = [
  syncTime,
  stableLight,
  flapping,
  exposure,
  switchovers,
  roleConflicts,
  agreement,
  dataQuality,
];
