import { agreement } from './agreement.ts';
import type { Analyzer } from './analyzer.ts';
import { coincidence } from './coincidence.ts';
import { contradictedNotes } from './contradicted-notes.ts';
import { dataQuality } from './data-quality.ts';
import { exposure } from './exposure.ts';
import { flapping } from './flapping.ts';
import { linkFlapping } from './link-flapping.ts';
import { linksCrossed } from './links-crossed.ts';
import { loops } from './loops.ts';
import { rhythm } from './rhythm.ts';
import { roleConflicts } from './role-conflicts.ts';
import { roleFlapping } from './role-flapping.ts';
import { stableLight } from './stable-light.ts';
import { switchovers } from './switchovers.ts';
import { syncTime } from './sync-time.ts';

/** All analyzers, in the order in which their findings are told. */
export const analyzers: readonly Analyzer[] = [
  syncTime,
  stableLight,
  flapping,
  loops,
  rhythm,
  coincidence,
  exposure,
  switchovers,
  roleConflicts,
  roleFlapping,
  linkFlapping,
  linksCrossed,
  agreement,
  contradictedNotes,
  dataQuality,
];
