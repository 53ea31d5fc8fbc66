import { endLines, linesOf, linesOfAll, uniqueLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { flappingSpells } from '../timeline/flapping.ts';
import { unobservedIn } from '../timeline/observation.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type {
  FitnessFigures,
  FitnessReason,
  NonEmpty,
  PairTimeline,
  SourceLine,
  StateSignal,
  TimelineEvent,
} from '../vocabulary.ts';

/** How a pair stands where its log ends, for however long it must have been ready. Source: design.md, section 7, readiness. */
export function fitnessFigures(facts: PairFacts, rules: TimelineRules): FitnessFigures {
  return {
    now: notReadyNow(facts),
    standing: [...flappingNow(facts, rules), ...differing(facts), ...pending(facts), ...linksDown(facts)],
    lastGap: lastGap(facts),
    ends: endLines(facts.timeline),
    ready: readyLines(facts),
  };
}

/** The line that said last that the partner is ready, and where the log ends. */
function readyLines({ timeline, readiness }: PairFacts): NonEmpty<SourceLine> {
  const now = stepAt(readiness.steps, timeline.to);
  const ends = endLines(timeline);
  return now === undefined ? ends : uniqueLines([...linesOf(now), ...ends.slice(-1)]);
}

function notReadyNow({ timeline, readiness }: PairFacts): FitnessReason | null {
  const now = stepAt(readiness.steps, timeline.to);
  if (now === undefined)
    return {
      said: 'Readiness of its partner was never logged.',
      isUnknown: true,
      lines: endLines(timeline),
    };
  return now.value === 'yes' ? null : { said: 'It has no ready partner.', lines: linesOf(now) };
}

/** The last span in which it was not observed whether the partner is ready; where no source ever tells that, none counts. */
function lastGap({ timeline, readiness: { signal } }: PairFacts): FitnessFigures['lastGap'] {
  if (signal === null) return null;
  const gap = unobservedIn(timeline, null, signal, Number.NEGATIVE_INFINITY, timeline.to).at(-1);
  return gap === undefined ? null : { to: gap.to, lines: gap.evidence };
}

function flappingNow({ timeline, losses }: PairFacts, rules: TimelineRules): readonly FitnessReason[] {
  const counted = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  const spell = flappingSpells(counted, timeline.to, rules.flapping).at(-1);
  return spell !== undefined && spell.to >= timeline.to
    ? [{ said: 'Its standby is flapping.', lines: linesOfAll(spell.events) }]
    : [];
}

function differing({ timeline }: PairFacts): readonly FitnessReason[] {
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

function pending({ timeline }: PairFacts): readonly FitnessReason[] {
  const now = stepAt(track(timeline, null, 'configuration'), timeline.to);
  return now?.value === 'pending' ? [{ said: 'A configuration is pending.', lines: linesOf(now) }] : [];
}

function linksDown({ timeline }: PairFacts): readonly FitnessReason[] {
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
