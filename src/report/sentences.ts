import type { Instant, Sentence } from '../vocabulary.ts';
import { iso } from './json.ts';
import { sayInstantBounds } from './words.ts';

/**
 * A sentence with its instants by the clock of a zone; the day is said unless it is that of `begin`. Bounds follow the latest
 * instant, so that `since` and `at` read well before both: `10:20:00 (10:19:00 at the earliest)`.
 */
export function saySentence(sentence: Sentence, zone: string, begin: number): string {
  const clock = (time: number): string => sayInstantBounds({ time, earliest: time }, zone, begin);
  return inWords(sentence, ({ time, earliest }) => withEarliest(clock(time), clock(earliest)));
}

/** The same with its instants as ISO 8601 UTC, as a document gives them. */
export function isoSentence(sentence: Sentence): string {
  return inWords(sentence, ({ time, earliest }) => withEarliest(iso(time), iso(earliest)));
}

function withEarliest(time: string, earliest: string): string {
  return time === earliest ? time : `${time} (${earliest} at the earliest)`;
}

function inWords(sentence: Sentence, sayAt: (at: Instant) => string): string {
  return sentence.map((piece) => (typeof piece === 'string' ? piece : sayAt(piece))).join('');
}
