import { endLines, linesOfAll } from '../timeline/evidence.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { sayDuration } from '../vocabulary.ts';
import type { Check } from './check.ts';

export const notFlapping: Check = {
  id: 'not-flapping',
  title: 'No flapping after the first insertion',
  judge({ facts, flapping, changes, to }) {
    const evidence = endLines(facts.timeline);
    if (facts.readiness.signal === null) {
      return { status: 'not-observed', statement: 'Losses of the partner were never logged.', evidence };
    }
    const from = Math.min(...changes.map((c) => (c.inserted ?? c.removed).earliest));
    const spell = flapping.find((f) => f.from <= to && f.to >= from);
    if (spell !== undefined) {
      return {
        status: 'fail',
        statement: `The standby was flapping: ${spell.events.length} losses in a row.`,
        evidence: linesOfAll(spell.events),
      };
    }
    const later = flapping.find(
      (f) => f.from > to && f.events.some((e) => e.time >= f.from && e.earliest <= to),
    );
    if (later !== undefined) {
      return {
        status: 'inconclusive',
        statement: `The standby was flapping, ${later.events.length} losses in a row; the logs do not show whether that began before the end of the swap.`,
        evidence: linesOfAll(later.events),
      };
    }
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
