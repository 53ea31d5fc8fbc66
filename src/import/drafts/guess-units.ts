import type { UnitDraft } from '../../vocabulary.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { isSeverity } from '../phrasebook/severity-words.ts';
import { subjectOf } from '../phrasebook/subjects.ts';
import { escapedText } from './general-wording.ts';

/** Names that say what a file is, not whose. */
const anyLog =
  /^(?:messages?|syslog|system|sys|log|logs|events?|journal|alarms?|trace|debug|info|error|out|output|export|poll|dump|data|diag(?:nostics)?|history|all)$/i;

/** A unit that a file may be of, by its own name, else by its folder's: `node-a.log` is of NODE-A. */
export function unitOfFile(file: string): string {
  const [base = '', ...folders] = file.split(/[/\\]/).reverse();
  const stem = base.replace(/\.gz$/i, '').replace(/\.[A-Za-z0-9]{1,4}$/, '');
  const named =
    [stem, ...folders].find(
      (name) => /\p{L}/u.test(name) && !anyLog.test(name) && name !== '.' && name !== '..',
    ) ?? stem;
  const words = named
    .split(/[^A-Za-z0-9]+/)
    .filter((word) => word !== '' && !anyLog.test(word) && !/^\d{4,}$/.test(word));
  const half = words.findIndex((word, i) => i > 0 && /^(?:[A-Za-z]|\d)$/.test(word));
  const pair = (half > 0 ? words.slice(0, half) : words)
    .join('_')
    .toUpperCase()
    .replace(/^[^A-Z]+/, '');
  const name = pair === '' ? 'PAIR' : pair;
  return half > 0 ? `${name}-${(words[half] ?? '').toUpperCase()}` : name;
}

/** How the two halves of one pair are told apart by the end of a name. */
const ends: readonly (readonly [string, string])[] = [
  ['a', 'b'],
  ['1', '2'],
  ['0', '1'],
  ['01', '02'],
  ['left', 'right'],
  ['l', 'r'],
  ['x', 'y'],
];

/**
 * Rules for units that no pattern gives a half. Two units that differ only in how they end are taken for the halves of one
 * pair; a unit that is no name in plain English is taken for a pair of that name. Empty where nothing needs one.
 */
export function guessUnits(units: readonly string[], phrasebook: Phrasebook): readonly UnitDraft[] {
  const names = [...new Set(units.map((u) => u.trim()))].filter((u) => u !== '' && !isSeverity(u));
  const known = names.map((unit) => subjectOf(phrasebook, { unit, half: '', role: '' }));
  if (known.some((subject) => subject !== null && (subject.half !== null || subject.role !== null)))
    return [];
  const halves = names.length === 2 ? halvesOf(names[0] ?? '', names[1] ?? '') : null;
  if (halves !== null) return [halves];
  return names
    .filter((_, i) => known[i] === null)
    .slice(0, 20)
    .map((name) => ({
      pattern: `^${escapedText(name)}$`,
      pair: name,
      because: 'taken for a pair of that name',
    }));
}

function halvesOf(one: string, other: string): UnitDraft | null {
  const [a, b] = [one, other].sort();
  if (a === undefined || b === undefined) return null;
  for (const [first, second] of ends) {
    if (!a.toLowerCase().endsWith(first) || !b.toLowerCase().endsWith(second)) continue;
    const [stemA, stemB] = [a.slice(0, -first.length), b.slice(0, -second.length)];
    if (stemA !== stemB || !/\p{L}/u.test(stemA)) continue;
    const stem = stemA.replace(/[^\p{L}\p{N}]+$/u, '');
    const [halfA, halfB] = [a.slice(-first.length), b.slice(-second.length)];
    return {
      pattern: `^(?<pair>${escapedText(stem)})${escapedText(stemA.slice(stem.length))}(?<half>${halfA}|${halfB})$`,
      pair: null,
      because: 'two units that differ only in how they end, taken for the halves of one pair',
    };
  }
  return null;
}
