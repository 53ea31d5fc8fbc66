import type { NonEmpty, Notice, SourceLine } from '../../vocabulary.ts';
import type { Condition } from './conditions.ts';
import type { SinkState } from './sink-state.ts';
import type { UnclearRule } from './unclear-rules.ts';

/** What rows of a file show to be missing in its phrasebook: states, qualities, and what a rule says where it ends. */
export function phrasebookNotices(file: string, state: SinkState): readonly Notice[] {
  const rules = [...state.unclear.values()];
  return [
    ...stateNotices(file, state),
    ...qualityNotices(file, state),
    ...rules.map((rule) => unclearNotice(file, rule)),
  ];
}

/** More rows than these are no stray ones. Chosen here. */
const fewRows = 3;
const mostNamed = 5;

function stateNotices(file: string, { conditions }: SinkState): readonly Notice[] {
  const { known, place, isListed } = conditions;
  const all = [...known.values()].filter(({ count }) => count > 0);
  const unlisted = all.filter(({ stands }) => stands === undefined);
  const isNone = all.length > 0 && unlisted.length === all.length;
  const told = isNone ? unlisted : unlisted.filter(({ count }) => count > fewRows);
  const [first, ...others] = told;
  if (first === undefined) return [];
  const rows = told.reduce((sum, { count }) => sum + count, 0);
  const where = isListed ? `${place}.states` : 'the built-in states';
  const names = nameFew(told.map(({ text, count }) => `"${text}" (${rowsOf(count)})`));
  const what = isNone
    ? `None of the states in its rows is in ${where}, so no row could be used: ${names}.`
    : `${rowsOf(rows)} were ignored because their ${told.length === 1 ? 'state is' : 'states are'} not in ${where}: ${names}.`;
  const fix = `List which of them mean that a condition is active: ${isListed ? place : 'files[...]'}.states: { "${first.text}": on }, or off.`;
  return [notice(file, isNone, { what, fix, count: rows }, [first, ...others])];
}

function lineOf(file: string, { line, row }: Pick<Condition, 'line' | 'row'>): SourceLine {
  return { file, line, text: row };
}

function qualityNotices(file: string, { qualities, conditions, tally }: SinkState): readonly Notice[] {
  const all = [...qualities.values()];
  const [first, ...others] = all;
  if (first === undefined) return [];
  const rows = all.reduce((sum, { count }) => sum + count, 0);
  const names = nameFew(all.map(({ text, count }) => `"${text}" (${count})`));
  const isNone = tally[2] + tally[3] + tally[5] === 0;
  const what = isNone
    ? `None of its rows has good quality, so nothing was observed: ${names}.`
    : `${rowsOf(rows)} of bad quality, so not observed: ${names}.`;
  const fix = `Set ${conditions.place === 'files' ? 'good in a rule for the file' : `${conditions.place}.good`} in the phrasebook if one of them is good.`;
  return [notice(file, isNone, { what, fix, count: rows }, [first, ...others])];
}

/** A warning where no row of the file says anything by it; with the first row of each. */
function notice(
  file: string,
  isNone: boolean,
  said: Pick<Notice, 'what' | 'fix' | 'count'>,
  [first, ...others]: NonEmpty<Pick<Condition, 'line' | 'row'>>,
): Notice {
  const lines: NonEmpty<SourceLine> = [
    lineOf(file, first),
    ...others.slice(0, mostNamed - 1).map((other) => lineOf(file, other)),
  ];
  return { id: isNone ? 'states-not-listed' : 'unmatched-wording', ...said, from: null, to: null, lines };
}

function unclearNotice(file: string, rule: UnclearRule): Notice {
  const { place, message, signal, lacks, count } = rule;
  const named = place ?? `plain English for "${message}"`;
  const what =
    lacks === 'off'
      ? `When the condition clears, ${named} does not say what ${signal} becomes: ${notRecognised(count)}.`
      : `${named} is about the other half, but the unit names no half: ${notRecognised(count)}.`;
  const fix =
    lacks === 'off'
      ? `Add off: and a value of ${signal} to ${place ?? 'a rule for the message'}, or off: ignore.`
      : 'Add a half to the pattern of the unit, or a group (?<half>...) to that of the message.';
  return { id: 'unmatched-wording', what, fix, count, from: null, to: null, lines: [lineOf(file, rule)] };
}

function notRecognised(count: number): string {
  return `${rowsOf(count)} ${count === 1 ? 'was' : 'were'} not recognised`;
}

function rowsOf(count: number): string {
  return count === 1 ? 'one row' : `${count} rows`;
}

function nameFew(names: readonly string[]): string {
  const more = names.length - mostNamed;
  return `${names.slice(0, mostNamed).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}
