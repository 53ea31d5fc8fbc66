import { uniqueLines } from '../timeline/evidence.ts';
import type { NonEmpty, Source, SourceLine } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

/** Notes whose clock cannot be that of the readings: they have a module out that the readings find in place. */
export const contradictedNotes: Analyzer = {
  meta: {
    id: 'contradicted-notes',
    question: 'Do the notes agree with the readings?',
    needs: [],
    findings: ['contradicted-note'],
  },
  analyze({ timeline: { pair, contradicted } }) {
    return {
      checked: contradicted.length,
      notObserved: 0,
      findings: contradicted.map(({ half, from, to, sources }) => ({
        id: 'contradicted-note',
        severity: 'warning',
        pair,
        half,
        from,
        to,
        statement: `${sources[0].file} has half ${half} out of its slot at a time when readings find it in place: one of the two clocks is wrong. What these notes say of that work is kept as notes and not used.`,
        figures: {},
        evidence: linesAt(sources),
      })),
    };
  },
};

function linesAt([first, ...rest]: NonEmpty<Source>): NonEmpty<SourceLine> {
  const toLine = ({ file, line, text }: Source): SourceLine => ({ file, line, text });
  return uniqueLines([toLine(first), ...rest.map(toLine)]);
}
