import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { type FlappingSpell, flappingSpells } from '../timeline/flapping.ts';
import { kindsOf } from '../timeline/losses.ts';
import { track } from '../timeline/tracks.ts';
import { type Finding, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';
import type { Limits } from './limits.ts';

const links = ['link-a', 'link-b'] as const;

/** A link of one half that goes down and comes back again and again. */
export const linkFlapping: Analyzer = {
  meta: {
    id: 'link-flapping',
    question: 'Did a link of one half go down again and again?',
    needs: [],
    findings: ['link-flapping'],
  },
  analyze(facts, limits) {
    const { timeline } = facts;
    const all = timeline.halves.flatMap((half) => links.map((link) => ({ half, link })));
    const told = all.filter(({ half, link }) => track(timeline, half, link).length > 0);
    const downs = told.map((of) => ({ ...of, events: countedDowns(facts, of.half, of.link, limits) }));
    return {
      checked: downs.reduce((sum, { events }) => sum + events.length, 0),
      notObserved: all.length - told.length,
      findings: downs.flatMap(({ half, link, events }) =>
        flappingSpells(events, timeline.to, limits.rules.flapping).map((spell) =>
          toFinding(timeline.pair, half, link, spell),
        ),
      ),
    };
  },
};

/** Every time the link went down without a removal, reflash or restart of its own half that explains it. */
function countedDowns(
  { timeline, plannedWork }: PairFacts,
  half: string,
  link: (typeof links)[number],
  { rules }: Limits,
): readonly TimelineEvent[] {
  const planned = plannedWork.filter((work) => work.half === half);
  const kindOf = kindsOf(planned, track(timeline, half, 'restart'), rules);
  return track(timeline, half, link).filter(
    (step) => step.value === 'down' && !step.initial && kindOf(step) === 'counted',
  );
}

function toFinding(
  pair: string,
  half: string,
  link: (typeof links)[number],
  { events, from, to, peak }: FlappingSpell,
): Finding {
  const seconds = ((events.at(-1)?.time ?? from) - events[0].time) / 1000;
  const name = link === 'link-a' ? 'Link a' : 'Link b';
  return {
    id: 'link-flapping',
    severity: 'warning',
    pair,
    half,
    from,
    to,
    statement: `${name} of half ${half} is flapping: it went down ${events.length} times in ${sayDuration(seconds)}.`,
    figures: { link, downs: events.length, seconds, penalty: Math.round(peak * 1000) / 1000 },
    evidence: linesOfAll(events),
  };
}
