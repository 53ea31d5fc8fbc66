import { driftStudy } from './drift.ts';
import { questionsStudy } from './fleet-questions.ts';
import { groupComparisonStudy } from './group-comparison.ts';
import { poissonStudy } from './poisson-coverage.ts';
import type { Study } from './study.ts';
import { slopeLimitStudy, syncTrendStudy } from './sync-trends.ts';

/** Every study, in the order of the table. */
export const studies: readonly Study[] = [
  questionsStudy,
  driftStudy,
  syncTrendStudy,
  slopeLimitStudy,
  groupComparisonStudy,
  poissonStudy,
];
