import { holdsMostly, isClock, stampTest } from '../layouts/column-content.ts';
import { columnSpellings } from '../phrasebook/column-keys.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { folded } from '../phrasebook/plain-parameters.ts';
import { isSeverity } from '../phrasebook/severity-words.ts';
import { roleNamed, subjectOf } from '../phrasebook/subjects.ts';
import { guessStamp, type StampGuess } from './guess-stamp.ts';

/** Something with a name that many rows have: a column of a table, a key of JSON or key=value. */
export interface NamedCells {
  readonly name: string;
  /** What stands in it, row by row, trimmed; empty where a row has nothing. */
  readonly cells: readonly string[];
}

/** What each named thing is, by a key of the phrasebook, and how the stamps are written. */
export interface ContentGuess {
  readonly columns: Readonly<Record<string, string>>;
  readonly stamp: StampGuess;
}

const mostly = 0.8;
const some = 0.3;
/** Words that names of a key hold besides those of plain English; common practice, no source. */
const alsoNamed: Readonly<Record<string, RegExp>> = {
  time: /time|stamp|date|\bts\b|when/i,
  unit: /host|node|unit|device|instance|member|server|station|source|machine/i,
  message: /mess|msg|text|event|descr|log$|body|detail/i,
};

/**
 * When, which unit and what is said, by the names of the columns first and by what they hold; `null` where none holds
 * times. A date and a clock may stand apart.
 */
export function guessByContent(all: readonly NamedCells[], phrasebook: Phrasebook): ContentGuess | null {
  const filled = all.filter(({ cells }) => cells.some((c) => c.trim() !== ''));
  const timed = timeOf(
    filled.filter((c) => !isNamed(c, 'ended')),
    phrasebook,
  );
  if (timed === null) return null;
  const columns: Record<string, string> = { ...timed.columns };
  const isFree = ({ name }: NamedCells): boolean => !Object.values(columns).includes(name);
  const put = (key: string, found: NamedCells | undefined): void => {
    if (found !== undefined) columns[key] = found.name;
  };
  put(
    'severity',
    filled.find(
      (c) => isFree(c) && (holdsMostly(c, isSeverity) || /^(?:priority|severity|level|prio)$/i.test(c.name)),
    ),
  );
  put('unit', unitOf(filled.filter(isFree), phrasebook));
  put(
    'role',
    filled.find((c) => isFree(c) && holdsMostly(c, (cell) => roleNamed(cell) !== null)),
  );
  const free = filled.filter(isFree);
  const [parameter, value] = ['parameter', 'value'].map((key) => free.find((c) => isNamed(c, key)));
  if (parameter !== undefined && value !== undefined) {
    put('parameter', parameter);
    put('value', value);
  } else put('message', messageOf(free));
  return { columns, stamp: timed.stamp };
}

function timeOf(all: readonly NamedCells[], phrasebook: Phrasebook): ContentGuess | null {
  const stamped = all
    .map((column) => ({ column, stamp: stampOf(column.cells) }))
    .filter(({ stamp }) => stamp !== null)
    .sort((a, b) => Number(isNamed(b.column, 'time')) - Number(isNamed(a.column, 'time')));
  const { isDate } = stampTest(phrasebook);
  const clock = all.find((column) => holdsMostly(column, isClock));
  const date = all.find((column) => holdsMostly(column, (cell) => isDate(cell) || /^\d{8}$/.test(cell)));
  if (date !== undefined && clock !== undefined) {
    const stamp = stampOf(date.cells.map((cell, i) => `${cell.trim()} ${clock.cells[i]?.trim() ?? ''}`));
    if (stamp !== null) return { columns: { date: date.name, clock: clock.name }, stamp };
  }
  const first = stamped[0];
  return first === undefined || first.stamp === null
    ? null
    : { columns: { time: first.column.name }, stamp: first.stamp };
}

/** How cells that hold a stamp and nothing else write it. */
function stampOf(cells: readonly string[]): StampGuess | null {
  const said = cells.filter((c) => c.trim() !== '');
  const stamp = guessStamp(said);
  if (stamp === null || stamp.isSince) return null;
  const whole = said.filter((cell) => {
    const split = stamp.split(cell);
    return split !== null && split.before.trim() === '' && split.after.trim() === '';
  });
  return whole.length >= said.length * mostly ? stamp : null;
}

function unitOf(all: readonly NamedCells[], phrasebook: Phrasebook): NamedCells | undefined {
  const tellsHalf = (unit: string): boolean =>
    (subjectOf(phrasebook, { unit, half: '', role: '' })?.half ?? null) !== null;
  const isName = (cell: string): boolean => /^\S*\d\S*$/.test(cell) && /\p{L}/u.test(cell);
  const repeated = all.filter((c) => new Set(c.cells).size <= Math.max(2, c.cells.length / 2));
  return (
    repeated.find((c) => isNamed(c, 'unit') || isNamed(c, 'pair')) ??
    repeated.find((c) => holdsMostly(c, tellsHalf)) ??
    repeated.find((c) => alsoNamed.unit?.test(c.name) === true) ??
    repeated.find((c) => holdsMostly(c, isName) && new Set(c.cells).size > 1)
  );
}

function messageOf(all: readonly NamedCells[]): NamedCells | undefined {
  const inWords = all.filter((c) => holdsSome(c, (cell) => /\p{L}\s+\p{L}/u.test(cell)));
  return (
    all.find((c) => isNamed(c, 'message')) ??
    inWords.find((c) => alsoNamed.message?.test(c.name) === true) ??
    inWords.toSorted((a, b) => b.cells.join('').length - a.cells.join('').length)[0]
  );
}

/** Whether a column is called as plain English calls one for that key. */
export function isNamed({ name }: NamedCells, key: string): boolean {
  const word = folded(name);
  if (key === 'time') return alsoNamed.time?.test(name) === true;
  return (['unit', 'pair', 'message', 'parameter', 'value', 'ended'] as const).some(
    (k) => k === key && columnSpellings(k).includes(word),
  );
}

/** Whether some of the cells that hold anything hold such. */
function holdsSome({ cells }: NamedCells, holds: (cell: string) => boolean): boolean {
  const said = cells.filter((cell) => cell !== '');
  return said.length > 0 && said.filter(holds).length >= some * said.length;
}
