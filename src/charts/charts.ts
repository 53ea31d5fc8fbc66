import { bringUps } from './bring-ups.ts';
import { staff } from './staff.ts';

/** All charts. */
export const charts = [staff, bringUps] as const;
