import { endLines, linesOfAll } from '../timeline/evidence.ts';
import type { FlappingSpell } from '../timeline/flapping.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { sayDuration } from '../vocabulary.ts';
import type { Check, Outcome } from './check.ts';

export const notFlapping: Check = {
  id: 'not-flapping',
  title: 'No flapping after the first insertion',
  judge({ facts, flapping, changes, to }) {
    const evidence = endLines(facts.timeline);
    if (facts.readiness.signal === null) {
      return { status: 'not-observed', statement: 'Losses of the partner were never logged.', evidence };
    }
    const from = Math.min(...changes.map((c) => (c.inserted ?? c.removed).earliest));
    const removed = Math.min(...changes.map((c) => c.removed.time));
    // The penalty of losses before the swap outlives them, and is none of the new module's: a loss within the swap must be among them.
    const spells = flapping.filter((f) => f.from <= to);
    // A partner that is lost after the removal had been fitted, whether or not that was logged.
    const sure = spells.find((f) => f.events.some((e) => e.earliest > removed && e.time <= to));
    if (sure !== undefined) {
      const statement = `The standby was flapping: ${sure.events.length} losses in a row.`;
      return { status: 'fail', statement, evidence: linesOfAll(sure.events) };
    }
    const maybe = spells.find((f) => f.events.some((e) => e.time >= from && e.earliest <= to));
    if (maybe !== undefined)
      return undecided(maybe, 'any of them lies between the first insertion and the end of the swap');
    const later = flapping.find(
      (f) => f.from > to && f.events.some((e) => e.time >= f.from && e.earliest <= to),
    );
    if (later !== undefined) return undecided(later, 'that began before the end of the swap');
    const gap = unobservedIn(facts.timeline, null, facts.readiness.signal, from, to)[0];
    if (gap !== undefined) {
      return {
        status: 'inconclusive',
        statement: `Losses of the partner were not observed for ${sayDuration((gap.to - gap.from) / 1000)}.`,
        evidence: gap.evidence,
      };
    }
    const losses = facts.losses.filter(
      (l) => l.kind === 'counted' && l.event.time >= from && l.event.time <= to,
    ).length;
    return {
      status: 'pass',
      statement:
        losses === 0 ? 'The partner was not lost again.' : `Counted losses: ${losses}, too few for flapping.`,
      evidence,
    };
  },
};

function undecided({ events }: FlappingSpell, what: string): Outcome {
  return {
    status: 'inconclusive',
    statement: `The standby was flapping, ${events.length} losses in a row; the logs do not show whether ${what}.`,
    evidence: linesOfAll(events),
  };
}
