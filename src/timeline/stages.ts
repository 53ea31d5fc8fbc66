import { type PairTimeline, type Stage, type StageTime, stages, type TimelineEvent } from '../vocabulary.ts';
import { between, censored, measured, type Stamp } from './durations.ts';
import { linesOf } from './evidence.ts';
import { otherHalf } from './standby.ts';
import { countUntil, stepAt, track, valueAt } from './tracks.ts';

/**
 * How far a half is at an instant, from whatever is logged of it then; `null` if nothing tells. `syncStarted`: a logged
 * sync start belongs to it. Source: design.md, section 6.
 */
export function stageAt(
  timeline: PairTimeline,
  half: string,
  time: number,
  syncStarted: boolean,
): Stage | null {
  const own = (signal: Parameters<typeof track>[2]): string | null =>
    valueAt(track(timeline, half, signal), time);
  const present = valueAt(track(timeline, null, 'partner-present'), time);
  const moved = movedAt(timeline, half, time);
  if (moved?.signal === 'removed' || present === 'no' || own('role') === 'none') return 'absent';
  const light = own('light');
  if (valueAt(track(timeline, null, 'partner-ready'), time) === 'yes')
    return light === 'steady' ? 'steady' : 'ready';
  const other = otherHalf(timeline, half);
  const firmware = own('firmware');
  const aligned =
    firmware !== null && other !== null && firmware === valueAt(track(timeline, other, 'firmware'), time);
  if (syncStarted || (aligned && light === 'flashing')) return 'synchronising';
  if (aligned) return 'firmware-aligned';
  if (firmware !== null || own('model') !== null || own('serial') !== null) return 'identified';
  if (light === 'flashing' || light === 'steady' || own('role') === 'standby') return 'starting';
  return present === 'yes' || moved !== undefined ? 'present' : null;
}

/**
 * The stages that a half reached from the event that began it to `end`, each when it was first reached or passed, and the
 * time in it to the next; the last is watched to `end`, censored. `syncStart`: from when on a sync start counts.
 */
export function stagesBetween(
  timeline: PairTimeline,
  half: string,
  start: TimelineEvent,
  end: Stamp,
  syncStart: number | null,
): readonly StageTime[] {
  const { events } = timeline;
  const later = events.slice(countUntil(events, start.time), countUntil(events, end.time));
  const reached: { stage: Stage; at: TimelineEvent }[] = [];
  for (const at of [start, ...later]) {
    const stage = stageAt(timeline, half, at.time, syncStart !== null && syncStart <= at.time);
    if (stage !== null && rankOf(stage) > rankOf(reached.at(-1)?.stage ?? null)) reached.push({ stage, at });
  }
  return reached.map(({ stage, at }, index) => {
    const next = reached[index + 1]?.at;
    const inStage = next === undefined ? censored(between(at, end)) : measured(between(at, next));
    return { stage, entered: { time: at.time, earliest: at.earliest }, inStage, evidence: linesOf(at) };
  });
}

/** The last removal or insertion of a half up to an instant; of one instant, the insertion comes after the removal. */
function movedAt(timeline: PairTimeline, half: string, time: number): TimelineEvent | undefined {
  const removed = stepAt(track(timeline, half, 'removed'), time);
  const inserted = stepAt(track(timeline, half, 'inserted'), time);
  if (removed === undefined || inserted === undefined) return removed ?? inserted;
  return inserted.time >= removed.time ? inserted : removed;
}

/** The place of a stage on the ladder, from 0; -1 for none. */
function rankOf(stage: Stage | null): number {
  return stage === null ? -1 : stages.indexOf(stage);
}
