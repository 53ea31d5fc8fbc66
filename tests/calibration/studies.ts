import { boutsOfNextYear } from './bouts-ahead.ts';
import { campaignForecast } from './forecast.ts';
import type { Study } from './study.ts';

/** Every study, in the order of the table. */
export const studies: readonly Study[] = [campaignForecast, boutsOfNextYear];
