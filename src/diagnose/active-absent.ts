import { linesOf, linesOfAll } from '../timeline/evidence.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { mayChange, stepAt, track } from '../timeline/tracks.ts';
import { type PairTimeline, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import type { Cause, Trouble } from './cause.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: one attempt that certainly failed while a line stated for each half that
 * it was not active, or within 30 s after a logged restart of the half that a line stated as active; and no more attempts that
 * failed without it than with it. A standby copies from the active half, so where there is none no sync can succeed, and one such
 * failure says as much as many. That the standby says nothing of its partner is no evidence: a role that is only concluded does
 * not count; nor does a restart that a supply fault of that half brought: the supply is nearer to what can be put right. Common
 * practice, no source.
 */
export const activeAbsent: Cause = {
  meta: {
    id: 'active-absent',
    title: 'No half was active when attempts failed',
    kind: 'condition',
    explains: 'A standby with no active half to copy from: none had the role, or the active one restarted.',
    shows: 'The stated roles of both halves, or a restart of the active one, when an attempt fails.',
    needs: [['role']],
    next: 'Get one half active before the standby is tried again: read the fault, the supply and the restarts of the half that left the active role. A standby copies from the active half; while there is none, stop and call for support.',
  },
  weigh: (trouble) =>
    weighState(trouble, {
      priorDecibans: trouble.limits.forbiddingDecibans,
      words: 'a missing active half',
      test: (observation) => readActive(observation, trouble),
    }),
};

/** At the end of an attempt, what came at its very stamp included: a cause comes before its effect. */
function readActive({ facts, half, ready, to, at }: Observation, { limits, to: now }: Trouble): Seen | null {
  const { timeline } = facts;
  const when = ready ? at : to;
  // A restart matters where an attempt failed just after it; as the log ends nothing has failed of it yet.
  const restarted = at === now ? null : activeRestart(timeline, half, when, limits.coincidenceSeconds);
  if (restarted !== null) return restarted;
  const stated = timeline.halves.flatMap((h) => {
    const step = statedAt(timeline, h, when);
    return step === null ? [] : [{ half: h, step }];
  });
  const active = stated.find(({ step }) => step.value === 'active');
  if (active !== undefined)
    return { holds: false, statement: `Half ${active.half} is active.`, evidence: linesOf(active.step) };
  const [one, other] = stated;
  if (one === undefined || other === undefined) return null;
  return {
    holds: true,
    statement: `Half ${one.half} has the role ${one.step.value} and half ${other.half} the role ${other.step.value}, so no half is active.`,
    evidence: linesOfAll([one.step, other.step]),
  };
}

/** A restart, in the seconds before an instant, of the half that was stated as active, other than the half that is to come up. */
function activeRestart(
  timeline: PairTimeline,
  own: string | null,
  when: number,
  windowSeconds: number,
): Seen | null {
  for (const half of timeline.halves.filter((h) => h !== own)) {
    const restarts = track(timeline, half, 'restart').filter(
      (e) => e.time >= when - windowSeconds * 1000 && e.time <= when,
    );
    for (const restart of restarts.toReversed()) {
      const role = statedBefore(timeline, half, restart.time);
      if (role?.value !== 'active' || isOfSupply(timeline, restart, windowSeconds)) continue;
      const before = sayDuration((when - restart.time) / 1000);
      const statement = `Half ${half}, the active one, restarted ${before} before.`;
      return { holds: true, statement, evidence: linesOfAll([role, restart]) };
    }
  }
  return null;
}

/** A supply that dipped just before brought the restart: that is the trouble, and is counted as such. */
function isOfSupply(timeline: PairTimeline, { half, time }: TimelineEvent, windowSeconds: number): boolean {
  const step = stepAt(track(timeline, half, 'supply'), time);
  const back = step?.value === 'good' && !step.initial && time - step.time <= windowSeconds * 1000;
  return step?.value === 'fault' || back;
}

function statedBefore(timeline: PairTimeline, half: string, time: number): TimelineEvent | undefined {
  const step = stepAt(track(timeline, half, 'role'), time, 'before');
  return step?.concluded === true ? undefined : step;
}

/**
 * The role that a line states of a half at an instant; `null` if none does, if it may have changed by then, or if it was active
 * and has restarted since: whether it still is no line says. A half that was not does not become so by a restart.
 */
function statedAt(timeline: PairTimeline, half: string, time: number): TimelineEvent | null {
  const steps = track(timeline, half, 'role');
  const step = stepAt(steps, time);
  if (step === undefined || step.concluded || step.value === null) return null;
  const restart = step.value === 'active' ? stepAt(track(timeline, half, 'restart'), time) : undefined;
  const isSeen = unobservedIn(timeline, half, 'role', time - 1, time).length === 0;
  const isOld = (restart !== undefined && restart.time > step.time) || mayChange(steps, step.time, time);
  return isSeen && !isOld ? step : null;
}
