import { uniqueLines } from '../timeline/evidence.ts';
import type { ContradictedNote, NonEmpty, Source, SourceLine } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

const against: Readonly<Record<ContradictedNote['reason'], string>> = {
  'in-place': 'at a time when readings find it in place',
  elsewhen:
    'at a time when readings show the same module before and after; they show its replacement at another time',
};

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
      findings: contradicted.map(({ half, from, to, reason, sources }) => ({
        id: 'contradicted-note',
        severity: 'warning',
        pair,
        half,
        from,
        to,
        statement: `${sources[0].file} has half ${half} out of its slot ${against[reason]}: the clock of the notes or that of the readings is wrong. What these notes say of that work is kept as notes and not used.`,
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
