import type { Measure, NonEmpty, PairTimeline, SourceLine, TimelineEvent } from '../vocabulary.ts';
import { type End, holdLimit, isUnbroken, type Start } from './bring-up-watch.ts';
import { between, censored, exactly, judge, measured, notObserved } from './durations.ts';
import { endLines, linesOf, linesOfAll, uniqueLines } from './evidence.ts';
import type { TimelineRules } from './rules.ts';
import { countUntil, firstFrom, track } from './tracks.ts';

/** The light from the start of a bring-up to the first steady that held. Source: design.md, section 4, Stable light. */
export function lightOf(
  timeline: PairTimeline,
  { half, event }: Start,
  end: End,
  rules: TimelineRules,
): { readonly measure: Measure; readonly evidence: NonEmpty<SourceLine> } {
  const steps = track(timeline, half, 'light');
  if (steps.length === 0 || isUnbroken(steps, event, end.time, 'steady'))
    return { measure: notObserved, evidence: linesOf(event) };
  const [first, last] = [countUntil(steps, event.time, 'before'), countUntil(steps, end.time)];
  const during = steps.slice(first, last);
  const steady = during.find(
    (s, index) => s.value === 'steady' && holds(timeline, half, s, steps[first + index + 1], end, rules),
  );
  if (steady === undefined) {
    const watched = between(event, exactly(Math.max(end.time, event.time)));
    const outcome = judge(watched.low, null, rules.lightLimitSeconds);
    return {
      measure: { ...censored(watched), outcome },
      evidence: uniqueLines([...linesOf(event), ...during.flatMap(linesOf), ...endLines(timeline).slice(-1)]),
    };
  }
  const duration = between(event, steady);
  const outcome = judge(duration.low, duration.high, rules.lightLimitSeconds);
  return { measure: { ...measured(duration), outcome }, evidence: linesOfAll([event, steady]) };
}

/** A steady light has held if nothing changed it for the hold time, or only that its half became active. */
function holds(
  timeline: PairTimeline,
  half: string,
  steady: TimelineEvent,
  next: TimelineEvent | undefined,
  end: End,
  rules: TimelineRules,
): boolean {
  const until = next === undefined || next.value === 'steady' ? holdLimit(end, timeline.to) : next.earliest;
  if (Math.min(until, holdLimit(end, timeline.to)) - steady.time >= rules.holdMs) return true;
  if (next?.value !== 'off' && end.why !== 'switchover') return false;
  const roles = track(timeline, half, 'role');
  const active = firstFrom(roles, countUntil(roles, steady.time), (s) => s.value === 'active');
  if (active === undefined) return false;
  return next === undefined || active.earliest <= next.time + rules.belongsMs;
}
