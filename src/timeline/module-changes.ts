import type { Instant, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import type { TimelineRules } from './rules.ts';
import { stepAt, track } from './tracks.ts';

/** What a half reports itself to be; `null` where nothing is reported. */
export interface Identity {
  readonly model: string | null;
  readonly serial: string | null;
  readonly firmware: string | null;
}

/** Another module came into a half. */
export interface ModuleChange {
  readonly half: string;
  readonly removed: TimelineEvent;
  readonly inserted: TimelineEvent;
  readonly before: Identity;
  /** The first identity reported after the insertion. */
  readonly found: Identity;
}

/**
 * Removals that another module followed in the same half: another serial, or where serials are not known another model,
 * or out for longer than two minutes. Source: design.md, section 5.
 */
export function moduleChangesOf(timeline: PairTimeline, rules: TimelineRules): readonly ModuleChange[] {
  return timeline.halves
    .flatMap((half) => changesOfHalf(timeline, half, rules))
    .sort((a, b) => a.removed.time - b.removed.time);
}

function changesOfHalf(timeline: PairTimeline, half: string, rules: TimelineRules): readonly ModuleChange[] {
  const moves = timeline.events.filter(
    (e) => e.half === half && (e.signal === 'removed' || e.signal === 'inserted'),
  );
  return moves.flatMap((removed, index) => {
    const inserted = moves[index + 1];
    if (removed.signal !== 'removed' || inserted?.signal !== 'inserted') return [];
    const until = moves.slice(index + 2).find((e) => e.signal === 'removed')?.time ?? timeline.to;
    const before = identityBefore(timeline, half, removed);
    const found = identityFound(timeline, half, removed, inserted, until);
    const change = { half, removed, inserted, before, found };
    return isAnother(change, rules) ? [change] : [];
  });
}

function identityBefore(timeline: PairTimeline, half: string, removed: TimelineEvent): Identity {
  const last = (signal: keyof Identity): string | null => {
    const steps = track(timeline, half, signal).filter((s) => s.value !== null);
    const known = stepAt(steps, Math.max(removed.earliest, removed.time - 1));
    return known?.value ?? null;
  };
  return { model: last('model'), serial: last('serial'), firmware: last('firmware') };
}

function identityFound(
  timeline: PairTimeline,
  half: string,
  removed: Instant,
  inserted: Instant,
  until: number,
): Identity {
  const first = (signal: keyof Identity): string | null => {
    const steps = track(timeline, half, signal);
    // A state that is not restated after the insertion went on as it was: the same model, the same firmware.
    const own = steps.find(
      (s) => s.value !== null && s.time > removed.earliest && s.time >= removed.time && s.time <= until,
    );
    return own?.value ?? stepAt(steps, inserted.time)?.value ?? null;
  };
  return { model: first('model'), serial: first('serial'), firmware: first('firmware') };
}

function isAnother({ removed, inserted, before, found }: ModuleChange, rules: TimelineRules): boolean {
  if (before.serial !== null && found.serial !== null) return before.serial !== found.serial;
  if (before.model !== null && found.model !== null && before.model !== found.model) return true;
  return inserted.earliest - removed.time > rules.outMs;
}

/** What a half reports at an instant. */
export function identityAt(timeline: PairTimeline, half: string, time: number): Identity {
  const at = (signal: keyof Identity): string | null =>
    stepAt(track(timeline, half, signal), time)?.value ?? null;
  return { model: at('model'), serial: at('serial'), firmware: at('firmware') };
}
