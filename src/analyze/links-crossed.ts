import { linesOf, linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { type Spell, spells, track } from '../timeline/tracks.ts';
import { type Finding, sayDuration } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

/** Whether the two control networks of a half were ever exchanged. */
export const linksCrossed: Analyzer = {
  meta: {
    id: 'links-crossed',
    question: 'Was any half connected with its two links exchanged?',
    needs: ['links'],
    findings: ['links-crossed'],
  },
  analyze(facts) {
    const { halves } = facts.timeline;
    const told = halves.filter((half) => track(facts.timeline, half, 'links').length > 0);
    return {
      checked: told.length,
      notObserved: halves.length - told.length,
      findings: told.flatMap((half) =>
        spells(track(facts.timeline, half, 'links'), 'crossed').map((spell) => toFinding(facts, half, spell)),
      ),
    };
  },
};

function toFinding({ timeline }: PairFacts, half: string, { start, end }: Spell): Finding {
  const to = end?.time ?? timeline.to;
  const seconds = (to - start.time) / 1000;
  const since = start.initial ? ' since before the log begins' : '';
  const until = end === null ? 'up to the end of the log' : 'until they were set right';
  return {
    id: 'links-crossed',
    severity: 'warning',
    pair: timeline.pair,
    half,
    from: start.time,
    to,
    statement: `The links of half ${half} were crossed${since}, seen for ${sayDuration(seconds)}, ${until}.`,
    figures: { seconds },
    evidence: end === null ? linesOf(start) : linesOfAll([start, end]),
  };
}
