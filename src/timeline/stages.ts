import { type PairTimeline, type Stage, type StageTime, stages, type TimelineEvent } from '../vocabulary.ts';
import { between, censored, measured, type Stamp } from './durations.ts';
import { linesOf } from './evidence.ts';
import { otherHalf } from './standby.ts';
import { countUntil, stepAt, track, valueAt } from './tracks.ts';

/**
 * How far a half is at an instant, by what is logged of it then, a concluded role not; `null` if nothing tells. Of a half that no
 * line names, only what is logged of the pair counts. `syncStarted`: a logged sync start belongs to it; `begun`: a partner that has
 * been ready since before then is not this one. Source: design.md, section 6.
 */
export function stageAt(
  timeline: PairTimeline,
  half: string | null,
  time: number,
  syncStarted: boolean,
  begun = Number.NEGATIVE_INFINITY,
): Stage | null {
  const own = (signal: Parameters<typeof track>[2]): string | null =>
    half === null ? null : valueAt(track(timeline, half, signal), time);
  const role = half === null ? null : statedRole(timeline, half, time);
  const present = valueAt(track(timeline, null, 'partner-present'), time);
  const moved = half === null ? undefined : movedAt(timeline, half, time);
  const isSeen = present === 'yes' || own('serial') !== null || own('model') !== null;
  if (moved?.signal === 'removed' || present === 'no' || (role === 'none' && !isSeen)) return 'absent';
  const light = own('light');
  const ready = stepAt(track(timeline, null, 'partner-ready'), time);
  if (ready?.value === 'yes' && ready.time >= begun) return light === 'steady' ? 'steady' : 'ready';
  const other = half === null ? null : otherHalf(timeline, half);
  const firmware = own('firmware');
  const aligned =
    firmware !== null && other !== null && firmware === valueAt(track(timeline, other, 'firmware'), time);
  if (syncStarted || (aligned && light === 'flashing')) return 'synchronising';
  if (aligned) return 'firmware-aligned';
  if (firmware !== null || own('model') !== null || own('serial') !== null) return 'identified';
  if (light === 'flashing' || light === 'steady' || role === 'standby') return 'starting';
  return present === 'yes' || moved !== undefined ? 'present' : null;
}

/**
 * The stages that a half reached from the event that began it to `end`, each when it was first reached or passed, and the
 * time in it to the next; the last is watched to `end`, censored. `syncStart`: from when on a sync start counts.
 */
export function stagesBetween(
  timeline: PairTimeline,
  half: string | null,
  start: TimelineEvent,
  end: Stamp,
  syncStart: number | null,
): readonly StageTime[] {
  const { events } = timeline;
  const later = events.slice(countUntil(events, start.time), countUntil(events, end.time));
  const reached: { stage: Stage; at: TimelineEvent }[] = [];
  for (const at of [start, ...later]) {
    const isSyncing = syncStart !== null && syncStart <= at.time;
    const stage = stageAt(timeline, half, at.time, isSyncing, start.time);
    if (stage !== null && rankOf(stage) > rankOf(reached.at(-1)?.stage ?? null)) reached.push({ stage, at });
  }
  return reached.map(({ stage, at }, index) => {
    const next = reached[index + 1]?.at;
    const inStage = next === undefined ? censored(between(at, end)) : measured(between(at, next));
    return { stage, entered: { time: at.time, earliest: at.earliest }, inStage, evidence: linesOf(at) };
  });
}

/** The role that a line states of a half; `null` where none does, though it may be concluded. */
function statedRole(timeline: PairTimeline, half: string, time: number): string | null {
  const step = stepAt(track(timeline, half, 'role'), time);
  return step === undefined || step.concluded ? null : step.value;
}

/** The removal after which no module was put into a half up to an instant; `null` without. */
export function removalOf(timeline: PairTimeline, half: string, time: number): TimelineEvent | null {
  const moved = movedAt(timeline, half, time);
  return moved?.signal === 'removed' ? moved : null;
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
