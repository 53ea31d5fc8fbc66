import type { NonEmpty, SourceLine } from '../vocabulary.ts';
import type { EvidenceList } from './evidence.ts';

/** The numbers of some evidence lines as HTML, each a link to its line. */
export function cite(evidence: EvidenceList, lines: NonEmpty<SourceLine>): string {
  const numbers = evidence.numbersOf(lines).map((n) => `<a href="#line-${n}">${n}</a>`);
  return numbers.length === 0 ? '' : ` <sup>${numbers.join(' ')}</sup>`;
}
