import { alikeGroups } from './alike-groups.ts';
import { boutsOfNextYear } from './bouts-ahead.ts';
import { driftStudy } from './drift.ts';
import { questionsStudy } from './fleet-questions.ts';
import { campaignForecast } from './forecast.ts';
import { poissonStudy } from './poisson-coverage.ts';
import type { Study } from './study.ts';
import { syncLimits } from './sync-limits.ts';
import { slopeLimitStudy, syncTrendStudy } from './sync-trends.ts';

/** Every study, in the order of the table. */
export const studies: readonly Study[] = [
  questionsStudy,
  campaignForecast,
  boutsOfNextYear,
  syncLimits,
  alikeGroups,
  driftStudy,
  syncTrendStudy,
  slopeLimitStudy,
  poissonStudy,
];
