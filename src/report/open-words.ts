import type { OpenSwap } from '../vocabulary.ts';
import { sayInstantBounds } from './words.ts';

/** Since when a swap that is open waits, and when its limit is, by the clock of a zone; `begin` names the day first. */
export function sayOpen({ since, limitSeconds, holdPoint }: OpenSwap, zone: string, begin: number): string {
  const limitAt = since.time + limitSeconds * 1000;
  const limit = sayInstantBounds({ time: limitAt, earliest: limitAt }, zone, begin);
  const stop = holdPoint === 'stop' ? ' Stop and call for support.' : '';
  return `Waiting since ${sayInstantBounds(since, zone, begin)}; the limit is ${limit}.${stop}`;
}
