import { alikeGroups } from './alike-groups.ts';
import { boutsOfNextYear } from './bouts-ahead.ts';
import { driftStudy } from './drift.ts';
import { questionsStudy } from './fleet-questions.ts';
import { campaignForecast } from './forecast.ts';
import { lossTrend, rateChange } from './loss-changes.ts';
import { curveLimits, groupChanges, groupsApart, groupsDiffer, ratioLimits } from './loss-groups.ts';
import { poissonStudy } from './poisson-coverage.ts';
import { falseOnes, power, standsOut } from './stands-out.ts';
import type { Study } from './study.ts';
import { syncLimits } from './sync-limits.ts';
import { slopeLimitStudy, syncTrendStudy } from './sync-trends.ts';

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
