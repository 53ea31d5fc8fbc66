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
