import { conditionState } from './state-words.ts';
import { valueMeant } from './values.ts';

/** What the cell beside a message says of it: that it is so, that it is not, that it was not done, something else, or nothing. */
export type Says = 'nothing' | 'affirms' | 'denies' | 'undoes' | 'else';

/** Words of what is done; yes and no are those of any value. Common practice, no source. */
const done = /^(?:ok|done|completed?|finished|success(?:ful)?)$/i;
/** Words of what is not done, or not yet. Common practice, no source. */
const undone =
  /^(?:not .*|failed|failure|unsuccessful|inhibited|aborted|refused|rejected|denied|blocked|disabled|cancell?ed|pending|requested|timed? ?out)$/i;
/** An identity, a count, a measured value: it says what or how much, not whether. */
const identity = /\d/;

/** What a text beside a message says of it; of words that are not known, and may deny it, something else. */
export function saidBeside(value: string): Says {
  const text = value.trim();
  if (text === '' || identity.test(text)) return 'nothing';
  const answer = valueMeant('partner-ready', {}, text);
  if (undone.test(text)) return 'undoes';
  if (answer === 'no') return 'denies';
  if (answer === 'yes' || done.test(text)) return 'affirms';
  const condition = conditionState(text);
  return condition === 'off' ? 'denies' : condition === undefined ? 'else' : 'affirms';
}
