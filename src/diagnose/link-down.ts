import { linesOf } from '../timeline/evidence.ts';
import { activeAt } from '../timeline/standby.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { begins, dropOuts, unexplained } from './begins.ts';
import type { Cause, Trouble } from './cause.ts';
import { fieldRules } from './field-rules.ts';
import type { Observation } from './observations.ts';
import { weighFault } from './weigh-fault.ts';
import type { Seen } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: one link that a line states as down while the module is in and has had
 * 30 s to start, at one attempt that failed or as the log ends, where it was up when the partner was ready; or losses and
 * failures within 30 s after a link went down by itself, so many of them as chance would bring once in some hundred times. What a link shows of an empty place, or of a module that has just come in or
 * restarted, says nothing. Common practice, no source.
 */
export const linkDown: Cause = {
  meta: {
    id: 'link-down',
    title: 'A network link goes down',
    kind: 'condition',
    explains: 'Attempts that start well and fail when the half loses one of its two networks.',
    shows: 'A link is down when attempts fail, or failures follow its going down more often than chance.',
    needs: [['link-a', 'link-b']],
    next: `Check the cable and both plugs of the network that goes down, at the half and at its switch, without pulling the module; change the cable if in doubt. ${fieldRules.cables}`,
  },
  weigh: (trouble) =>
    weighFault(
      trouble,
      {
        priorDecibans: trouble.limits.faultyDecibans,
        words: 'a link that is down',
        test: (observation) => readLinks(observation, trouble.limits.startingMs),
      },
      linkLosses(trouble),
      whichLink(linkLosses(trouble)),
    ),
};

/** Links that went down by themselves: not with a module, its supply or its restart. */
function linkLosses({ facts: { timeline }, rules }: Trouble): readonly TimelineEvent[] {
  const others = timeline.events.filter(
    (e) => e.signal === 'restart' || (e.signal === 'supply' && e.value === 'fault'),
  );
  const losses = begins(timeline, ['link-a', 'link-b'], 'down');
  return unexplained(losses, timeline, [...others, ...dropOuts(timeline, rules)], rules);
}

function whichLink(losses: readonly TimelineEvent[]): string {
  const names = [...new Set(losses.map((e) => `${e.signal} of half ${e.half ?? 'unknown'}`))].sort();
  return `${names.join(' or ')} went down`;
}

function readLinks({ facts: { timeline }, half, at }: Observation, startingMs: number): Seen | null {
  const halves = [half, ...timeline.halves.filter((h) => h !== half)];
  const steps = halves.flatMap((h) =>
    (['link-a', 'link-b'] as const).flatMap((signal) => {
      const step = stepAt(track(timeline, h, signal), at);
      const isTold = step !== undefined && isRunning(timeline, h, at, startingMs);
      return isTold ? [{ half: h, signal, step }] : [];
    }),
  );
  const shown = steps.find(({ step }) => step.value === 'down') ?? steps[0];
  if (shown === undefined) return null;
  const holds = shown.step.value === 'down';
  // That the links of the other half are up says nothing for one that has just come in.
  if (!holds && half !== null && !isRunning(timeline, half, at, startingMs)) return null;
  return {
    holds,
    statement: holds
      ? `${shown.signal === 'link-a' ? 'Link a' : 'Link b'} of half ${shown.half} is down.`
      : 'No link is reported as down.',
    evidence: linesOf(shown.step),
  };
}

/** A module is in the half, and has been since long enough before to have brought its links up. */
function isRunning(timeline: PairTimeline, half: string | null, at: number, startingMs: number): boolean {
  const present = stepAt(track(timeline, null, 'partner-present'), at);
  const isPartner = half !== activeAt(timeline, at);
  if (isPartner && present?.value === 'no') return false;
  const seen = isPartner && present?.initial === false ? [present] : [];
  const moves = (['removed', 'inserted', 'restart'] as const).flatMap(
    (signal) => stepAt(track(timeline, half, signal), at) ?? [],
  );
  const last = [...seen, ...moves].reduce<TimelineEvent | null>(
    (latest, e) => (latest === null || e.time >= latest.time ? e : latest),
    null,
  );
  if (last === null) return true;
  return last.signal !== 'removed' && at - last.time >= startingMs;
}
