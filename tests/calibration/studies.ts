import { alikeGroups } from './alike-groups.ts';
import { boutsOfNextYear } from './bouts-ahead.ts';
import { campaignForecast } from './forecast.ts';
import type { Study } from './study.ts';
import { syncLimits } from './sync-limits.ts';

/** Every study, in the order of the table. */
export const studies: readonly Study[] = [campaignForecast, boutsOfNextYear, syncLimits, alikeGroups];
