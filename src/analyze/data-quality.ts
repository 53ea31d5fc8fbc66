import { total } from '../timeline/coverage.ts';
import type { Finding, NonEmpty, SourceLine } from '../vocabulary.ts';
import { sayDuration } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

/** Spans in which nothing was read of the pair, and so nothing is claimed. */
export const dataQuality: Analyzer = {
  meta: {
    id: 'data-quality',
    question: 'Was the pair read without a break?',
    needs: [],
    findings: ['unobserved'],
  },
  analyze({ timeline }) {
    const { unobserved, pair, coverage } = timeline;
    const [first, ...rest] = unobserved.flatMap((u) => [...u.evidence]);
    const seconds = total(unobserved) / 1000;
    const evidence: NonEmpty<SourceLine> | null = first === undefined ? null : [first, ...rest];
    const spans = unobserved.length === 1 ? 'one span' : `${unobserved.length} spans`;
    const finding: Finding[] =
      evidence === null
        ? []
        : [
            {
              id: 'unobserved',
              severity: 'info',
              pair,
              half: null,
              from: unobserved[0]?.from ?? null,
              to: unobserved.at(-1)?.to ?? null,
              statement: coverage.some(({ stream }) => stream.kind === 'reading')
                ? `The polls leave ${spans} unobserved, ${sayDuration(seconds)} in total; they count neither as good nor as bad.`
                : `The logs do not cover the pair for ${sayDuration(seconds)}; that time counts neither as good nor as bad.`,
              figures: { spans: unobserved.length, seconds },
              evidence,
            },
          ];
    return { checked: timeline.coverage.length, notObserved: 0, findings: finding };
  },
};
