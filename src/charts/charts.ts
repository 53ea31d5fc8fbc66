import { bringUps } from './bring-ups.ts';
import { staff } from './staff.ts';
import { stateRows } from './state-rows.ts';

/** All charts. */
export const charts = [staff, bringUps, stateRows] as const;
