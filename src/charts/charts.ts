import { bringUps } from './bring-ups.ts';
import { census } from './census.ts';
import { forecast } from './forecast.ts';
import { lossRates } from './loss-rates.ts';
import { lossRatios } from './loss-ratios.ts';
import { lossesOverTime } from './losses-over-time.ts';
import { meanBouts } from './mean-bouts.ts';
import { rateChanges } from './rate-changes.ts';
import { staff } from './staff.ts';
import { stateRows } from './state-rows.ts';
import { syncDrift } from './sync-drift.ts';
import { syncTimeSurvival } from './sync-time-survival.ts';

/** All charts. */
export const charts = [
  staff,
  bringUps,
  stateRows,
  lossRates,
  lossesOverTime,
  rateChanges,
  meanBouts,
  lossRatios,
  syncTimeSurvival,
  syncDrift,
  census,
  forecast,
] as const;
