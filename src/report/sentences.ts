import type { Instant, Sentence } from '../vocabulary.ts';
import { iso } from './json.ts';
import { sayInstantBounds } from './words.ts';

/** A sentence with its instants by the clock of a zone; the day is said unless it is that of `begin`. */
export function saySentence(sentence: Sentence, zone: string, begin: number): string {
  return inWords(sentence, (at) => sayInstantBounds(at, zone, begin));
}

/** The same with its instants as ISO 8601 UTC, as a document gives them. */
export function isoSentence(sentence: Sentence): string {
  return inWords(sentence, ({ time, earliest }) =>
    earliest === time ? iso(time) : `${iso(earliest)} to ${iso(time)}`,
  );
}

function inWords(sentence: Sentence, sayAt: (at: Instant) => string): string {
  return sentence.map((piece) => (typeof piece === 'string' ? piece : sayAt(piece))).join('');
}
