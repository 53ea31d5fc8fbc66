import { endLines, linesOf, linesOfAll, uniqueLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { flappingSpells } from '../timeline/flapping.ts';
import { unobservedIn } from '../timeline/observation.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import {
  type NonEmpty,
  type PairReview,
  type PairTimeline,
  type SourceLine,
  type StateSignal,
  sayDuration,
  type TimelineEvent,
} from '../vocabulary.ts';

/** Why a pair is not fit, and the lines that say so; of what was never logged those between which it was not. */
export interface Reason {
  readonly said: string;
  /** Nothing speaks against the pair: what must be known was never logged, or for too short a time. */
  readonly isUnknown?: true;
  readonly lines: NonEmpty<SourceLine>;
}

const mostLines = 20;

/**
 * Whether a pair is fit for a swap where its log ends, and why not. What was never logged cannot be promised: it is a
 * reason too, and where there are no others fitness is not known. The evidence is that of the reasons; of a fit pair what its readiness rests on. Source: design.md,
 * section 7, readiness.
 */
export function readinessForSwap(
  facts: PairFacts,
  rules: TimelineRules,
  readyMs: number,
): PairReview['readiness'] {
  const reasons = reasonsAgainstSwap(facts, rules, readyMs);
  const [first, ...others] = reasons;
  const lines =
    first === undefined
      ? readyLines(facts)
      : uniqueLines([...first.lines, ...others.flatMap((r) => r.lines)]);
  return {
    fit: fitFor(reasons),
    reasons: reasons.map((r) => r.said),
    evidence: lines.slice(0, mostLines),
  };
}

/** Everything that speaks against a swap of a pair where its log ends, or must be known and is not. */
export function reasonsAgainstSwap(
  facts: PairFacts,
  rules: TimelineRules,
  readyMs: number,
): readonly Reason[] {
  return [
    ...notReady(facts, readyMs),
    ...flappingNow(facts, rules),
    ...differing(facts),
    ...pending(facts),
    ...linksDown(facts),
    ...unobservedBefore(facts, readyMs),
  ];
}

/** Fit without a reason; where each only says what is not known, that is not known: `null`. */
export function fitFor(reasons: readonly Reason[]): boolean | null {
  if (reasons.length === 0) return true;
  return reasons.every((r) => r.isUnknown) ? null : false;
}

/** The line that said last that the partner is ready, and where the log ends. */
export function readyLines({ timeline, readiness }: PairFacts): NonEmpty<SourceLine> {
  const now = stepAt(readiness.steps, timeline.to);
  const ends = endLines(timeline);
  return now === undefined ? ends : uniqueLines([...linesOf(now), ...ends.slice(-1)]);
}

function notReady(facts: PairFacts, readyMs: number): readonly Reason[] {
  const { timeline, readiness, losses } = facts;
  const now = stepAt(readiness.steps, timeline.to);
  if (now === undefined)
    return [
      {
        said: 'Readiness of its partner was never logged.',
        isUnknown: true,
        lines: endLines(timeline),
      },
    ];
  if (now.value !== 'yes') return [{ said: 'It has no ready partner.', lines: linesOf(now) }];
  const since = timeline.to - readyMs;
  const [first, ...others] = losses.flatMap((l) => (l.event.time > since ? [l.event] : []));
  if (first === undefined) return [];
  const said = `It lost its ready partner within the last ${sayDuration(readyMs / 1000)}.`;
  return [{ said, lines: linesOfAll([first, ...others]) }];
}

function flappingNow({ timeline, losses }: PairFacts, rules: TimelineRules): readonly Reason[] {
  const counted = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  const spell = flappingSpells(counted, timeline.to, rules.flapping).at(-1);
  return spell !== undefined && spell.to >= timeline.to
    ? [{ said: 'Its standby is flapping.', lines: linesOfAll(spell.events) }]
    : [];
}

function differing({ timeline }: PairFacts): readonly Reason[] {
  return (['firmware', 'model'] as const).flatMap((signal) => {
    const steps = timeline.halves.map((half) => stepAt(track(timeline, half, signal), timeline.to));
    const known = steps.filter((step) => step !== undefined).filter(({ value }) => value !== null);
    const [one, two] = known;
    if (one === undefined || two === undefined)
      return [
        {
          said: sayUnknown(signal, timeline, one?.half ?? null),
          isUnknown: true,
          lines: unknownLines(timeline, steps),
        },
      ];
    if (one.value === two.value) return [];
    const said = `The ${signal} of its halves differs: ${one.value} and ${two.value}.`;
    return [{ said, lines: linesOfAll([one, two]) }];
  });
}

function sayUnknown(signal: string, { halves }: PairTimeline, known: string | null): string {
  const others = halves.filter((half) => half !== known);
  const of = known === null || others.length !== 1 ? 'its halves' : `half ${others[0]}`;
  return `The ${signal} of ${of} is not known.`;
}

function unknownLines(
  timeline: PairTimeline,
  steps: readonly (TimelineEvent | undefined)[],
): NonEmpty<SourceLine> {
  const said = steps.flatMap((step) => (step === undefined ? [] : linesOf(step)));
  return uniqueLines([...endLines(timeline), ...said]);
}

function pending({ timeline }: PairFacts): readonly Reason[] {
  const now = stepAt(track(timeline, null, 'configuration'), timeline.to);
  return now?.value === 'pending' ? [{ said: 'A configuration is pending.', lines: linesOf(now) }] : [];
}

function linksDown({ timeline }: PairFacts): readonly Reason[] {
  const links: readonly (readonly [StateSignal, string])[] = [
    ['link-a', 'Link a'],
    ['link-b', 'Link b'],
  ];
  return timeline.halves.flatMap((half) =>
    links.flatMap(([signal, words]) => {
      const now = stepAt(track(timeline, half, signal), timeline.to);
      return now?.value === 'down'
        ? [{ said: `${words} of half ${half} is down.`, lines: linesOf(now) }]
        : [];
    }),
  );
}

function unobservedBefore({ timeline, readiness }: PairFacts, readyMs: number): readonly Reason[] {
  const since = timeline.to - readyMs;
  if (timeline.from > since) {
    const said = `Its log covers only ${sayDuration((timeline.to - timeline.from) / 1000)}.`;
    return [{ said, isUnknown: true, lines: endLines(timeline) }];
  }
  const { signal } = readiness;
  const gap = signal === null ? undefined : unobservedIn(timeline, null, signal, since, timeline.to).at(-1);
  if (gap === undefined) return [];
  const said = `It was not observed throughout the last ${sayDuration(readyMs / 1000)}.`;
  return [{ said, lines: gap.evidence }];
}
