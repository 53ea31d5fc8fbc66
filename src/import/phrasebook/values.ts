import type { Gauge, Signal } from '../../vocabulary.ts';
import { valueSpellings } from './built-in-phrasebook.ts';
import { allowedValues } from './rule-parts.ts';
import { foldedWord } from './value-words.ts';

/** What a value's text means; `undefined` for wording that is not known. The site's own values come first. */
export function valueMeant(
  signal: Signal | Gauge,
  own: Readonly<Record<string, string>>,
  text: string,
): string | undefined {
  // A log may hold any text, also the name of something that every object has.
  if (Object.hasOwn(own, text)) return own[text];
  const word = text.trim().toLowerCase();
  const folded = Object.entries(own).find(([spelling]) => spelling.toLowerCase() === word);
  if (folded !== undefined) return folded[1];
  const spellings = valueSpellings[signal] ?? {};
  const meant = foldedWord(word);
  const plain = Object.hasOwn(spellings, meant) ? spellings[meant] : undefined;
  if (plain !== undefined) return plain;
  const allowed = allowedValues(signal);
  if (allowed === null) return text.trim();
  return allowed.includes(word) ? word : undefined;
}
