import type { UnitDraft } from '../../vocabulary.ts';
import { isPlantName } from '../phrasebook/pair-names.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { isSeverity, isSeverityLetter } from '../phrasebook/severity-words.ts';
import { subjectOf } from '../phrasebook/subjects.ts';
import { escapedText } from './general-wording.ts';

/** Names that say what a file is, not whose. */
const anyLog =
  /^(?:messages?|syslog|system|sys|log|logs|events?|journal|alarms?|trace|debug|info|error|out|output|export|poll|dump|data|diag(?:nostics)?|history|all)$/i;

/**
 * A unit that a file may be of, by its own name, else by its folder's: `node-a.log` is of NODE-A. Where others of the files
 * have its name, the folder tells them apart.
 */
export function unitOfFile(file: string, files: readonly string[]): string {
  const [base = '', ...folders] = file.split(/[/\\]/).reverse();
  const isShared = files.filter((other) => other.split(/[/\\]/).at(-1) === base).length > 1;
  const stem = base.replace(/\.gz$/i, '').replace(/\.[A-Za-z0-9]{1,4}$/, '');
  const isName = (name: string): boolean => /\p{L}/u.test(name) && !anyLog.test(name);
  const named = [...(isShared ? [] : [stem]), ...folders].find(isName) ?? stem;
  const words = named
    .split(/[^A-Za-z0-9]+/)
    .filter((word) => word !== '' && !anyLog.test(word) && !/^\d{4,}$/.test(word));
  const half = words.findLastIndex((word, i) => i > 0 && /^(?:[A-Za-z]|\d)$/.test(word));
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

const mostRules = 20;

/**
 * Rules for units of which no pattern tells a half. Two of them are taken for the halves of one pair; one alone, and a name
 * as plants give them, for a pair. Empty where none is needed, or where words that may be anything are too many.
 */
export function guessUnits(units: readonly string[], phrasebook: Phrasebook): readonly UnitDraft[] {
  const names = [...new Set(units.map((u) => u.trim()))].filter((u) => u !== '' && !isSeverity(u));
  const known = names.map((unit) => subjectOf(phrasebook, { unit, half: '', role: '' }));
  if (known.some((subject) => subject !== null && (subject.half !== null || subject.role !== null)))
    return [];
  const [one, other] = names;
  if (one === undefined || names.every(isSeverityLetter)) return [];
  const halves = names.length === 2 && other !== undefined ? halvesOf(one, other) : null;
  if (names.every(isPlantName) && !known.includes(null))
    return halves === null
      ? []
      : [{ ...halves, because: `where ${names.join(' and ')} are the halves of one pair`, isOn: false }];
  if (names.length === 2 && other !== undefined) return [halves ?? anyHalves(one, other)];
  return names
    .filter((name) => names.length === 1 || isPlantName(name))
    .slice(0, mostRules)
    .map((name) => ({
      pattern: `^${escapedText(name)}$`,
      pair: name,
      because: 'taken for a pair of that name',
      isOn: true,
    }));
}

function anyHalves(one: string, other: string): UnitDraft {
  const [a = '', b = ''] = [one, other].sort();
  return {
    pattern: `^(?<half>${escapedText(a)}|${escapedText(b)})$`,
    pair: `${a} and ${b}`,
    because: 'the only two units, taken for the halves of one pair',
    isOn: true,
  };
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
      isOn: true,
    };
  }
  return null;
}
