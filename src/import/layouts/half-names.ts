import { stateSignals } from '../../vocabulary.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { folded, parameterNamed, wordsApart } from '../phrasebook/plain-parameters.ts';
import { type Head, unitKeys } from './head.ts';

/** The name of a column taken apart: `A role` is the role of half `A`. */
export interface HalfName {
  readonly half: string;
  readonly parameter: string;
}

/** A word for a half may stand before its letter or number: `half A role`. It stands before the parameter, or behind it. */
const forms = [
  /^(?:(?:half|slot|place) )?(?<half>[a-z]|[1-9]) (?<parameter>.+)$/,
  /^(?<parameter>.+?) \(?(?:(?:half|slot|place) )?(?<half>[a-z]|[1-9])\)?$/,
];
/** What is longer is no such name. Chosen here. */
const longestName = 100;

/** What two halves of a pair each have one of, so that two columns of it are no two things of one half. */
const ofEachHalf = stateSignals.filter((s) => ['role', 'light', 'firmware', 'model', 'serial'].includes(s));

/**
 * The columns of a table of pairs whose names say of which half they are, by name. Empty where the row says the half, and where no two
 * columns tell the same of two halves: `supply A` and `supply B` alone may be two supplies of one.
 */
export function halfNames(head: Head, phrasebook: Phrasebook): ReadonlyMap<string, HalfName> {
  const isOfPairs = unitKeys.every((key) => head.column(key) >= 0 === (key === 'pair'));
  if (!isOfPairs) return new Map();
  const all = forms.map((form) => namesOf(form, head, phrasebook));
  return all.find((names) => tellsOfTwo(names, phrasebook)) ?? new Map();
}

function namesOf(form: RegExp, head: Head, phrasebook: Phrasebook): ReadonlyMap<string, HalfName> {
  const found = new Map<string, HalfName>();
  for (const name of head.names) {
    if (name.length > longestName || parameterNamed(phrasebook, name) !== undefined) continue;
    const { half = '', parameter = '' } = form.exec(folded(wordsApart(name)))?.groups ?? {};
    if (parameterNamed(phrasebook, parameter) !== undefined)
      found.set(name, { half: half.toUpperCase(), parameter });
  }
  return found;
}

function tellsOfTwo(names: ReadonlyMap<string, HalfName>, phrasebook: Phrasebook): boolean {
  const told = [...names.values()].map((name) => ({
    ...name,
    signal: parameterNamed(phrasebook, name.parameter)?.signal,
  }));
  return ofEachHalf.some(
    (signal) => new Set(told.filter((t) => t.signal === signal).map(({ half }) => half)).size === 2,
  );
}
