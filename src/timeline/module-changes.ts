import type { Instant, PairTimeline, Signal, TimelineEvent } from '../vocabulary.ts';
import type { TimelineRules } from './rules.ts';
import { stepAt, track } from './tracks.ts';

/** What a half reports itself to be; `null` where nothing is reported. */
export interface Identity {
  readonly model: string | null;
  readonly serial: string | null;
  readonly firmware: string | null;
}

/** A module went out of a half, and another came in, or is awaited. */
export interface ModuleChange {
  readonly half: string;
  readonly removed: TimelineEvent;
  /** `null`: nothing was put in by the end of the log. */
  readonly inserted: TimelineEvent | null;
  readonly before: Identity;
  /** The first identity reported after the insertion. */
  readonly found: Identity;
}

/**
 * Removals that another module followed in the same half: another serial, or where serials are not known another model, or
 * out for longer than two minutes (by notes: maybe longer). One that was logged or noted and that nothing followed is a change that has begun; so is one
 * whose module had no time to say what it is before the log ends. Source: design.md, section 5.
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
  let since = Number.NEGATIVE_INFINITY;
  return moves.flatMap((removed, index) => {
    const next = moves[index + 1];
    if (removed.signal !== 'removed' || next?.signal === 'removed') return [];
    const inserted = next ?? null;
    const until = moves.slice(index + 2).find((e) => e.signal === 'removed')?.time ?? timeline.to;
    const before = identityBefore(timeline, half, removed, since);
    const found = inserted === null ? nothing : identityFound(timeline, half, { removed, inserted }, until);
    const change = { half, removed, inserted, before, found };
    if (!isAnother(change, timeline, rules)) return [];
    // A module that only came back is the same one still, no matter what was said of it before it was out.
    since = removed.time;
    return [change];
  });
}

const nothing: Identity = { model: null, serial: null, firmware: null };

/** What the module said of itself last; what was said up to `since`, when another was replaced, was said of that one. */
function identityBefore(
  timeline: PairTimeline,
  half: string,
  removed: TimelineEvent,
  since: number,
): Identity {
  const last = (signal: keyof Identity): string | null => {
    const steps = track(timeline, half, signal).filter((s) => s.value !== null && s.time > since);
    const known = stepAt(steps, Math.max(removed.earliest, removed.time - 1));
    return known?.value ?? null;
  };
  return { model: last('model'), serial: last('serial'), firmware: last('firmware') };
}

/** The first that is said after the removal; else what a poll went on to read all the while, which the removal did not end. */
function identityFound(
  timeline: PairTimeline,
  half: string,
  { removed, inserted }: { readonly removed: Instant; readonly inserted: Instant },
  until: number,
): Identity {
  const first = (signal: keyof Identity): string | null => {
    const steps = track(timeline, half, signal);
    const own = steps.find(
      (s) => s.value !== null && s.time > removed.earliest && s.time >= removed.time && s.time <= until,
    );
    const old = stepAt(steps, inserted.time);
    return own?.value ?? (old !== undefined && old.time < removed.earliest ? old.value : null);
  };
  return { model: first('model'), serial: first('serial'), firmware: first('firmware') };
}

function isAnother(
  { removed, inserted, before, found }: ModuleChange,
  timeline: PairTimeline,
  rules: TimelineRules,
): boolean {
  // What only polls show may be a module that starts again, until another says what it is.
  if (inserted === null) return removed.kind !== 'reading';
  if (before.serial !== null && found.serial !== null) return before.serial !== found.serial;
  if (before.model !== null && found.model !== null && before.model !== found.model) return true;
  const isEarly = found.serial === null && timeline.to - inserted.time < rules.identifyMs;
  return isOutLong(removed, inserted, rules) || (isEarly && removed.kind !== 'reading');
}

/** Out for longer than two minutes; of notes, which tell the minute only, it is enough that it may have been. */
function isOutLong(removed: TimelineEvent, inserted: TimelineEvent, { outMs }: TimelineRules): boolean {
  const isNoted = removed.kind === 'note' || inserted.kind === 'note';
  return (isNoted ? inserted.time - removed.earliest : inserted.earliest - removed.time) > outMs;
}

/**
 * Of each half that stopped reporting and was not seen again, where only polls show that: it may have been removed, or start
 * again. In the order of time.
 */
export function unexplainedBlanksOf(timeline: PairTimeline): readonly TimelineEvent[] {
  return timeline.halves
    .flatMap((half) => {
      const last = timeline.events.findLast(
        (e) => e.half === half && (e.signal === 'removed' || e.signal === 'inserted'),
      );
      return last?.signal === 'removed' && last.kind === 'reading' ? [last] : [];
    })
    .sort((a, b) => a.time - b.time);
}

/** A half was logged out, and in again if it was. */
export interface OutSpell {
  readonly half: string;
  readonly removed: TimelineEvent;
  readonly inserted: TimelineEvent | null;
}

/** When halves were out by what was logged or noted: also those whose own module came back, which is no change of it. */
export function outSpellsOf(timeline: PairTimeline): readonly OutSpell[] {
  return timeline.halves.flatMap((half) => {
    const moves = timeline.events.filter(
      (e) => e.half === half && (e.signal === 'removed' || e.signal === 'inserted'),
    );
    return moves.flatMap((removed, index) => {
      // What only polls show may be a module that starts again.
      if (removed.signal !== 'removed' || removed.kind === 'reading') return [];
      return [{ half, removed, inserted: moves[index + 1] ?? null }];
    });
  });
}

/** A spell without a partner that no removal, restart or reflash explains. */
export interface Absence {
  readonly gone: TimelineEvent;
  readonly back: TimelineEvent | null;
}

/** The absences of a pair, in the order of time: of what was out, and whether, nothing is known. Source: design.md, section 5. */
export function absencesOf(timeline: PairTimeline, rules: TimelineRules): readonly Absence[] {
  const presence = track(timeline, null, 'partner-present');
  const work = timeline.events.filter((e) => explaining.has(e.signal) && e.half !== null);
  return presence.flatMap((gone, index) => {
    if (gone.value !== 'no' || gone.initial) return [];
    const back = presence[index + 1] ?? null;
    const from = gone.earliest - rules.lagMs;
    const to = (back?.time ?? timeline.to) + rules.lagMs;
    return work.some((e) => e.time >= from && e.earliest <= to) ? [] : [{ gone, back }];
  });
}

const explaining: ReadonlySet<Signal> = new Set([
  'removed',
  'inserted',
  'restart',
  'reflash-start',
  'reflash-end',
]);

/** What a half reports at an instant. */
export function identityAt(timeline: PairTimeline, half: string, time: number): Identity {
  const at = (signal: keyof Identity): string | null =>
    stepAt(track(timeline, half, signal), time)?.value ?? null;
  return { model: at('model'), serial: at('serial'), firmware: at('firmware') };
}
