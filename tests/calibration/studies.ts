import { driftStudy } from './drift.ts';
import { coincidenceStudy, rhythmStudy } from './fleet-questions.ts';
import { groupComparisonStudy } from './group-comparison.ts';
import { poissonStudy } from './poisson-coverage.ts';
import type { Study } from './study.ts';
import { syncTrendStudy } from './sync-trends.ts';

/** Every study, in the order of the table. */
export const studies: readonly Study[] = [
  coincidenceStudy,
  rhythmStudy,
  driftStudy,
  syncTrendStudy,
  groupComparisonStudy,
  poissonStudy,
];
