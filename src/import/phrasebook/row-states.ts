import { conditionState } from './state-words.ts';

/** Whether the condition of a row stands, by its state; `null` for a state that says neither. */
export type Stands = 'on' | 'off' | null;

/** Reads a state by the site's own words, without case, else by plain English. `undefined` for a state that is in neither. */
export function stateReader(
  own: Readonly<Record<string, 'on' | 'off'>> | undefined,
): (text: string) => Stands | undefined {
  if (own === undefined) return plainState;
  const words = new Map(Object.entries(own).map(([word, stands]) => [word.trim().toLowerCase(), stands]));
  return (text) => words.get(text.trim().toLowerCase());
}

/** Of a condition whose state is not given it is said that it stands. */
function plainState(text: string): Stands | undefined {
  const found = text.trim() === '' ? 'on' : conditionState(text);
  return found === 'neither' ? null : found;
}

/** Qualities of a reading that was observed. Common practice, no source; 192 is the number that tag servers print for it. */
const goodWords: readonly string[] = ['good', 'ok', 'valid', '192', '216', '0xc0'];

/** True for a quality that says the reading was observed: the site's own words, else the usual ones; without case. */
export function qualityReader(own: readonly string[] | undefined): (text: string) => boolean {
  const words = new Set((own ?? goodWords).map((word) => word.trim().toLowerCase()));
  return (text) => words.has(text.trim().toLowerCase());
}
