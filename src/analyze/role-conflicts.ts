import type { Conflict } from '../timeline/role-conflicts.ts';
import { type Finding, sayBounds } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

/** Whether both halves were active at once, or neither. */
export const roleConflicts: Analyzer = {
  meta: {
    id: 'role-conflicts',
    question: 'Were both halves active at once, or neither?',
    needs: ['role'],
    findings: ['two-active', 'none-active'],
  },
  analyze({ conflicts, timeline }, limits) {
    // What the bounds leave open is no finding: the rows of two halves may belong to one exchange of roles.
    const certain = conflicts.filter((c) => c.low > limits.conflictSeconds);
    return {
      checked: conflicts.length,
      notObserved: conflicts.length - certain.length,
      findings: certain.map((c) => toFinding(c, timeline.pair)),
    };
  },
};

function toFinding({ kind, from, to, low, seconds, high, evidence }: Conflict, pair: string): Finding {
  const who = kind === 'two-active' ? 'Both halves were active' : 'Neither half was active';
  return {
    id: kind,
    severity: 'critical',
    pair,
    half: null,
    from,
    to,
    statement: `${who} for ${sayBounds(low, high)}.`,
    figures: { seconds, low, high },
    evidence,
  };
}
