import { linesOf } from '../timeline/evidence.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { TimelineEvent } from '../vocabulary.ts';
import { begins, dropOuts, unexplained } from './begins.ts';
import type { Cause, Trouble } from './cause.ts';
import { fieldRules } from './field-rules.ts';
import type { Observation } from './observations.ts';
import { weighFault } from './weigh-fault.ts';
import type { Seen } from './weigh-state.ts';

export const linkDown: Cause = {
  meta: {
    id: 'link-down',
    title: 'A network link goes down',
    kind: 'condition',
    explains: 'Attempts that begin well and fail when the half loses one of its two networks.',
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
        test: readLinks,
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

function readLinks({ facts: { timeline }, half, at }: Observation): Seen | null {
  const steps = [half, ...timeline.halves.filter((h) => h !== half)].flatMap((h) =>
    (['link-a', 'link-b'] as const).flatMap((signal) => {
      const step = stepAt(track(timeline, h, signal), at);
      return step === undefined ? [] : [{ half: h, signal, step }];
    }),
  );
  const shown = steps.find(({ step }) => step.value === 'down') ?? steps[0];
  if (shown === undefined) return null;
  const holds = shown.step.value === 'down';
  return {
    holds,
    statement: holds
      ? `${shown.signal === 'link-a' ? 'Link a' : 'Link b'} of half ${shown.half} is down.`
      : 'No link is reported as down.',
    evidence: linesOf(shown.step),
  };
}
