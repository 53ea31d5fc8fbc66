import { endLines } from '../timeline/evidence.ts';
import { availabilityOf, sumSpans } from '../timeline/exposure.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { type Finding, sayBounds, sayDuration, sayShare } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

/** How long the pair ran without a ready partner, planned and not. */
export const exposure: Analyzer = {
  meta: {
    id: 'exposure',
    question: 'How long did the pair run without a ready partner?',
    needs: ['partner-ready'],
    findings: ['exposure', 'unplanned-exposure'],
  },
  analyze(facts) {
    const { exposed } = facts;
    const known = facts.readiness.signal === null ? 0 : 1;
    const total = known === 1 ? [totalFinding(facts)] : [];
    return { checked: exposed.length, notObserved: 1 - known, findings: [...total, ...unplanned(facts)] };
  },
};

function totalFinding({ timeline, exposed }: PairFacts): Finding {
  const { seconds, low, high } = sumSpans(timeline, exposed, timeline.from, timeline.to);
  const longest = Math.max(0, ...exposed.map((span) => span.seconds));
  const availability = availabilityOf(timeline);
  const share =
    availability === null ? '' : `; a ready partner for ${sayShare(availability)} of the observed time`;
  const [first, ...rest] = exposed.flatMap((span) => [...span.evidence]);
  return {
    id: 'exposure',
    severity: 'info',
    pair: timeline.pair,
    half: null,
    from: timeline.from,
    to: timeline.to,
    statement:
      exposed.length === 0
        ? 'The pair had a ready partner throughout the observed time.'
        : `The pair ran ${sayBounds(low, high)} without a ready partner, the longest period ${sayDuration(longest)}${share}.`,
    figures: {
      seconds,
      low,
      high,
      longestSeconds: longest,
      stretches: exposed.length,
      availability,
    },
    evidence: first === undefined ? endLines(timeline) : [first, ...rest],
  };
}

/** Stretches that no removal, reflash or logged restart explains. */
function unplanned({ timeline, exposed, losses }: PairFacts): readonly Finding[] {
  const lossAt = new Map(losses.map((l) => [l.event.time, l]));
  return exposed.flatMap((span) => {
    const loss = lossAt.get(span.from);
    if (loss === undefined || loss.kind !== 'counted') return [];
    return [
      {
        id: 'unplanned-exposure',
        severity: 'warning',
        pair: timeline.pair,
        half: null,
        from: span.from,
        to: span.to,
        statement: `The ready partner was lost without planned work for ${sayBounds(span.low, span.high)}.`,
        figures: { seconds: span.seconds, low: span.low, high: span.high },
        evidence: span.evidence,
      } as const,
    ];
  });
}
