import { linesOfAll } from '../timeline/evidence.ts';
import { flappingSpells } from '../timeline/flapping.ts';
import { sayDuration } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

/** A standby that is lost and comes back again and again. */
export const flapping: Analyzer = {
  meta: {
    id: 'flapping',
    question: 'Was the ready partner lost again and again?',
    needs: ['partner-ready'],
    findings: ['flapping'],
  },
  analyze({ losses, timeline }, limits) {
    const counted = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
    return {
      checked: counted.length,
      notObserved: 0,
      findings: flappingSpells(counted, timeline.to, limits.rules.flapping).map((spell) => {
        const { events, from, to, peak } = spell;
        const last = events.at(-1)?.time ?? from;
        const seconds = (last - events[0].time) / 1000;
        return {
          id: 'flapping',
          severity: 'warning',
          pair: timeline.pair,
          half: null,
          from,
          to,
          statement: `The standby is flapping: ${events.length} losses of the ready partner in ${sayDuration(seconds)}.`,
          figures: { losses: events.length, seconds, penalty: Math.round(peak * 1000) / 1000 },
          evidence: linesOfAll(events),
        };
      }),
    };
  },
};
