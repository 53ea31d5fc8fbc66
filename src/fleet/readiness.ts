import type { PairFacts } from '../timeline/facts.ts';
import { flappingSpells } from '../timeline/flapping.ts';
import { identityAt } from '../timeline/module-changes.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { stepAt, track, valueAt } from '../timeline/tracks.ts';
import { type PairReview, type StateSignal, sayDuration } from '../vocabulary.ts';

/**
 * Whether a pair is fit for a swap where its log ends, and why not. What was never logged can not be promised: it is a
 * reason too. Source: design.md, section 7, readiness.
 */
export function readinessForSwap(
  facts: PairFacts,
  rules: TimelineRules,
  readyMs: number,
): PairReview['readiness'] {
  const reasons = [
    ...notReady(facts, readyMs),
    ...flappingNow(facts, rules),
    ...differing(facts),
    ...pending(facts),
    ...linksDown(facts),
    ...unobservedBefore(facts, readyMs),
  ];
  return { fit: reasons.length === 0, reasons };
}

function notReady({ timeline, readiness, losses }: PairFacts, readyMs: number): readonly string[] {
  const now = stepAt(readiness.steps, timeline.to);
  if (now === undefined) return ['Whether its partner is ready was never logged.'];
  if (now.value !== 'yes') return ['It has no ready partner.'];
  const since = timeline.to - readyMs;
  if (losses.some((l) => l.event.time > since))
    return [`It lost its ready partner within the last ${sayDuration(readyMs / 1000)}.`];
  return [];
}

function flappingNow({ timeline, losses }: PairFacts, rules: TimelineRules): readonly string[] {
  const counted = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  const spell = flappingSpells(counted, timeline.to, rules.flapping).at(-1);
  return spell !== undefined && spell.to >= timeline.to ? ['Its standby is flapping.'] : [];
}

function differing({ timeline }: PairFacts): readonly string[] {
  const [one, two] = timeline.halves.map((half) => identityAt(timeline, half, timeline.to));
  return (['firmware', 'model'] as const).flatMap((signal) => {
    const [a, b] = [one?.[signal] ?? null, two?.[signal] ?? null];
    if (a === null || b === null) return [`The ${signal} of both halves is not known.`];
    return a === b ? [] : [`The ${signal} of its halves differs: ${a} and ${b}.`];
  });
}

function pending({ timeline }: PairFacts): readonly string[] {
  const now = valueAt(track(timeline, null, 'configuration'), timeline.to);
  return now === 'pending' ? ['A configuration waits to be sent.'] : [];
}

function linksDown({ timeline }: PairFacts): readonly string[] {
  const links: readonly (readonly [StateSignal, string])[] = [
    ['link-a', 'Link a'],
    ['link-b', 'Link b'],
  ];
  return timeline.halves.flatMap((half) =>
    links.flatMap(([signal, words]) =>
      valueAt(track(timeline, half, signal), timeline.to) === 'down'
        ? [`${words} of half ${half} is down.`]
        : [],
    ),
  );
}

function unobservedBefore({ timeline }: PairFacts, readyMs: number): readonly string[] {
  const since = timeline.to - readyMs;
  if (timeline.from > since)
    return [`Its log covers ${sayDuration((timeline.to - timeline.from) / 1000)} only.`];
  return timeline.unobserved.some((u) => u.to > since)
    ? [`It was not observed throughout the last ${sayDuration(readyMs / 1000)}.`]
    : [];
}
