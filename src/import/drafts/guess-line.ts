import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { subjectOf } from '../phrasebook/subjects.ts';
import { messageLead, type TextColumn, takeColumn } from './guess-columns-of-text.ts';
import { guessStamp, type SplitLine, type StampGuess } from './guess-stamp.ts';

/** How the lines of a text are written, as far as that can be guessed. */
export interface LineGuess {
  /** A pattern with the groups time and message, and where they were found unit, role and severity. */
  readonly line: string;
  /** What begins a record, where some lines begin none; else `null`. */
  readonly record: string | null;
  readonly stamp: StampGuess;
  /** What the lines call a unit, some of them; `null` where no place of the line names one. */
  readonly units: readonly string[] | null;
}

const mostColumns = 8;
const mostly = 0.9;

/** The pattern of the lines of a text, from a few hundred of them; `null` where hardly any has a stamp. */
export function guessLine(lines: readonly string[], phrasebook: Phrasebook): LineGuess | null {
  const stamp = guessStamp(lines);
  if (stamp === null) return null;
  const split = lines.flatMap((line) => stamp.split(line) ?? []);
  const before = columnsOf(
    split.map((s) => s.before.replace(/[\s[("']+$/, '')),
    true,
  );
  const behind = split.map(({ after }) => after.replace(/^[\])"']/, ''));
  const after = columnsOf(behind, false);
  const columns = [...before.columns, ...after.columns];
  const unit = unitColumn(columns, phrasebook);
  const groups = groupsOf(columns, unit);
  const placedAll = (some: readonly TextColumn[]): string =>
    some.map((c) => placed(c, groups.get(c))).join('');
  const head = `${placedAll(before.columns)}${opening(split)}(?<time>${stamp.pattern})${closing(split)}`;
  const rest = placedAll(after.columns);
  return {
    line: `^${head}${rest}${messageLead(after.rests)}(?<message>.*)$`,
    record: split.length < lines.length ? `^${unnamed(head)}` : null,
    stamp,
    units: unit === undefined ? null : [...new Set(unit.values)],
  };
}

/** The columns that the texts begin with, and what is left of each. */
function columnsOf(
  texts: readonly string[],
  isWhole: boolean,
): { readonly columns: readonly TextColumn[]; readonly rests: readonly string[] } {
  const columns: TextColumn[] = [];
  let rests = texts;
  while (columns.length < mostColumns) {
    const taken = takeColumn(rests, columns.length === 0) ?? (isWhole ? anyWord(rests) : null);
    if (taken === null) break;
    columns.push(taken.column);
    rests = taken.rests;
  }
  return { columns, rests };
}

/** What stands before a stamp is no message, no matter what it is. */
function anyWord(texts: readonly string[]): ReturnType<typeof takeColumn> {
  if (texts.filter((text) => text.trim() !== '').length < texts.length * mostly) return null;
  const found = texts.map((text) => /^\s*(\S*)/.exec(text));
  return {
    column: {
      kind: 'number',
      mark: 'word',
      lead: '\\s*',
      pattern: '(\\S+)',
      values: found.map((f) => f?.[1] ?? ''),
    },
    rests: texts.map((text, i) => text.slice(found[i]?.[0].length ?? 0)),
  };
}

/** The names of groups: each is given once, to the first column that it is for. */
function groupsOf(
  columns: readonly TextColumn[],
  unit: TextColumn | undefined,
): ReadonlyMap<TextColumn, string> {
  const groups = new Map<TextColumn, string>();
  if (unit !== undefined) groups.set(unit, 'unit');
  for (const name of ['severity', 'role'] as const) {
    const first = columns.find((c) => c.kind === name && c !== unit);
    if (first !== undefined) groups.set(first, name);
  }
  return groups;
}

function placed({ lead, pattern }: TextColumn, name: string | undefined): string {
  return `${lead}${pattern.replace(/(?<!\\)\((?!\?)/, name === undefined ? '(?:' : `(?<${name}>`)}`;
}

function unnamed(pattern: string): string {
  return pattern.replace(/\(\?<\w+>/g, '(?:');
}

/** Brackets or quotes around a stamp, and blanks. */
function opening(split: readonly SplitLine[]): string {
  const ends = new Set(
    split.map(({ before }) => (/[\s[("']*$/.exec(before)?.[0] ?? '').replace(/\s+/g, ' ')),
  );
  return classOf(ends);
}

function closing(split: readonly SplitLine[]): string {
  return classOf(new Set(split.map(({ after }) => /^[\])"']?/.exec(after)?.[0] ?? '')));
}

function classOf(texts: ReadonlySet<string>): string {
  const [only = ''] = texts;
  const piece = (text: string): string => text.replace(/[[\]()]/g, '\\$&').replaceAll(' ', '\\s+');
  return texts.size === 1 ? piece(only) : '[\\s\\[\\]()"\']*';
}

/** The column that names the unit: one whose names tell a half, else the name nearest to the stamp that is no program's. */
function unitColumn(columns: readonly TextColumn[], phrasebook: Phrasebook): TextColumn | undefined {
  const names = columns.filter(({ kind, values }) => kind === 'name' && values.some((v) => v.trim() !== ''));
  const tellsHalf = ({ values }: TextColumn): boolean => {
    const halves = values.filter((unit) => subjectOf(phrasebook, { unit, half: '', role: '' })?.half != null);
    return halves.length >= values.length * mostly;
  };
  return names.find(tellsHalf) ?? names.find(isUnit);
}

/** A program's name stands before a colon, often with its number; a word that never changes is a unit only as a host is. */
function isUnit({ mark, values }: TextColumn, place: number): boolean {
  const isOne = new Set(values).size === 1;
  if (mark === 'colon' && (isOne || values.some((v) => /\[\d+\]$/.test(v)))) return false;
  return !isOne || (mark === 'word' && place === 0) || /\d/.test(values[0] ?? '');
}
