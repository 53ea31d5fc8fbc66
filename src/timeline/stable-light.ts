import type { Measure, NonEmpty, PairTimeline, SourceLine, TimelineEvent } from '../vocabulary.ts';
import { type End, earliestOf, isUnbroken, type Start, waited, watchedStretches } from './bring-up-watch.ts';
import { judge, notObserved, type Stamp } from './durations.ts';
import { endLines, linesOf, uniqueLines } from './evidence.ts';
import { hasHeld, mayHaveHeld, type Stretch } from './holding.ts';
import { unobservedIn } from './observation.ts';
import type { TimelineRules } from './rules.ts';
import { countUntil, firstFrom, stepAt, track } from './tracks.ts';

/** The light from the start of a bring-up to the first steady that held. Source: design.md, section 4, Stable light. */
export function lightOf(
  timeline: PairTimeline,
  { half, event }: Start,
  end: End,
  steadies: readonly Stretch[],
  rules: TimelineRules,
): { readonly measure: Measure; readonly evidence: NonEmpty<SourceLine> } {
  const steps = track(timeline, half, 'light');
  // A light that was read as steady all the time that it may take was not seen to start, no matter what became of it later.
  const until = Math.min(
    lastLit(timeline, half, event, end, rules),
    event.time + rules.lightLimitSeconds * 1000,
  );
  if (steps.length === 0 || isUnbroken(steps, event, until, 'steady'))
    return { measure: notObserved, evidence: linesOf(event) };
  // Cut by the watch, a steady light that goes off because its half became active has held all the same.
  const whole = watchedStretches(steadies, event, { ...end, why: 'log-end' });
  const during = watchedStretches(steadies, event, end);
  const held = during.find(
    (s, index) => hasHeld(s, rules) || endsAsActive(timeline, half, whole[index], end, rules),
  );
  const mayHold = during.filter(
    (s, index) =>
      s === held || mayHaveHeld(s, rules) || endsAsActive(timeline, half, whole[index], end, rules),
  );
  const may = earliestOf([...mayHold, ...unseenBeforeActive(timeline, half, event, end, rules)]);
  const measure = waited(event, may, held?.start ?? null, end);
  const outcome = judge(measure.low ?? 0, measure.high, rules.lightLimitSeconds);
  const gaps = unobservedIn(timeline, half, 'light', event.time, held?.start.time ?? end.time);
  const seen = steps.slice(countUntil(steps, event.time, 'before'), countUntil(steps, end.time));
  const evidence =
    held === undefined ? [...seen.flatMap(linesOf), ...endLines(timeline).slice(-1)] : held.evidence;
  return {
    measure: { ...measure, outcome },
    evidence: uniqueLines([...linesOf(event), ...gaps.flatMap((g) => g.evidence), ...evidence]),
  };
}

/** Up to when the light of a half can be steady: one that goes off because its half became active was not broken before. */
function lastLit(
  timeline: PairTimeline,
  half: string,
  event: TimelineEvent,
  end: End,
  rules: TimelineRules,
): number {
  const steps = track(timeline, half, 'light');
  const next = steps[countUntil(steps, event.earliest)];
  const active = activeAfter(timeline, half, event.time);
  const isOff = next?.value === 'off' && active !== undefined;
  return isOff && active.earliest <= next.time + rules.belongsMs ? next.time - 1 : end.time;
}

/**
 * Between two readings of which the later found it off, its half active, the light may have been steady unseen; also where the
 * earlier found it off too, as in a place that was empty.
 */
function unseenBeforeActive(
  timeline: PairTimeline,
  half: string,
  event: TimelineEvent,
  end: End,
  rules: TimelineRules,
): readonly { readonly start: Stamp }[] {
  // All of it may lie within the bounds of the start itself.
  const place = (steps: readonly TimelineEvent[]): number => countUntil(steps, event.earliest);
  const roles = track(timeline, half, 'role');
  const active = firstFrom(roles, place(roles), (s) => s.value === 'active');
  if (active === undefined) return [];
  const lights = track(timeline, half, 'light');
  const reach = active.earliest - rules.belongsMs;
  const off = firstFrom(lights, place(lights), (s) => s.value === 'off' && s.time >= reach);
  const isDark = stepAt(lights, active.time)?.value === 'off';
  const unseen = [...(off === undefined ? [] : [off]), ...(isDark ? [active] : [])];
  return unseen.filter((s) => s.earliest < s.time && s.earliest <= end.time).map((start) => ({ start }));
}

/** A steady light that went off, or was not seen to, as its half took the active role. */
function endsAsActive(
  timeline: PairTimeline,
  half: string,
  stretch: Stretch | undefined,
  end: End,
  rules: TimelineRules,
): boolean {
  if (stretch === undefined || !stretch.isSeen) return false;
  const { time } = stretch.start;
  const lights = track(timeline, half, 'light');
  const next = firstFrom(lights, countUntil(lights, time), (s) => s.value !== 'steady');
  if (next?.value !== 'off' && end.why !== 'switchover') return false;
  const active = activeAfter(timeline, half, time);
  if (active === undefined) return false;
  return next === undefined || active.earliest <= next.time + rules.belongsMs;
}

/** When a half takes the active role after an instant. */
function activeAfter(timeline: PairTimeline, half: string, time: number): TimelineEvent | undefined {
  const roles = track(timeline, half, 'role');
  return firstFrom(roles, countUntil(roles, time), (s) => s.value === 'active');
}
