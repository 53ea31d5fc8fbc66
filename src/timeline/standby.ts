import type { PairTimeline } from '../vocabulary.ts';
import { track, valueAt } from './tracks.ts';

/** The half that is active at an instant; `null` if no role says. */
export function activeAt(timeline: PairTimeline, time: number): string | null {
  return timeline.halves.find((half) => valueAt(track(timeline, half, 'role'), time) === 'active') ?? null;
}

/**
 * The half that should be standby at an instant: the one that is not active. Where no role is logged, the one whose
 * light flashes or is steady, since that of the active half is off; `null` if nothing tells.
 */
export function standbyAt(timeline: PairTimeline, time: number): string | null {
  const active = activeAt(timeline, time);
  if (active !== null) return otherHalf(timeline, active);
  const standby = timeline.halves.find((h) => valueAt(track(timeline, h, 'role'), time) === 'standby');
  if (standby !== undefined) return standby;
  const lit = timeline.halves.filter((half) => {
    const light = valueAt(track(timeline, half, 'light'), time);
    return light === 'flashing' || light === 'steady';
  });
  return lit.length === 1 ? (lit[0] ?? null) : null;
}

/** The other half of the pair; `null` if the logs name only one. */
export function otherHalf(timeline: PairTimeline, half: string): string | null {
  return timeline.halves.find((h) => h !== half) ?? null;
}
