import type { Notice, SourceLine } from '../vocabulary.ts';
import type { DoubtfulPair } from './changes/doubtful-pairs.ts';
import type { SinkResult } from './changes/sink.ts';
import type { Plan } from './layouts/recognise.ts';
import { isSeverity } from './phrasebook/severity-words.ts';

/** A file whose reading is in doubt: how it was read, and what came of it. */
export interface Doubted {
  readonly file: string;
  readonly plan: Plan;
  readonly doubtful: readonly DoubtfulPair[];
  readonly result: Pick<SinkResult, 'rows' | 'unknown' | 'unknownRows' | 'last'>;
}

/** From so many rows on it is no chance that none is of use. Source: design.md, section 3. */
const manyRows = 100;

/**
 * What must be said aloud of a file in which names of pairs were looked for in the wrong place, or of which nothing was of
 * use: the place, an example, and the line of the phrasebook that would say it.
 */
export function doubtfulNotices(doubted: Doubted): readonly Notice[] {
  const found = [...pairNotices(doubted), ...strangerNotices(doubted)];
  return found.length > 0 ? found : uselessNotices(doubted);
}

/** Where the units of a file stand, in words. */
function place({ importer, head }: Plan): string {
  const named = [head.column('pair'), head.column('unit')].find((column) => column >= 0);
  if (importer.shape === 'text' || named === undefined) return 'in the place of the unit';
  return `in column "${head.names[named] ?? ''}"`;
}

/** The base name of a file, to be matched by a rule. */
function baseName(file: string): string {
  return file.split(/[/\\]/).at(-1) ?? file;
}

/** The rule that says where the unit stands instead. */
function unitRule({ file, plan }: Doubted): string {
  const match = `match: ${JSON.stringify(baseName(file))}`;
  return plan.importer.shape === 'text'
    ? `files: [{ ${match}, unit: RO1-A }]`
    : `files: [{ ${match}, columns: { unit: NAME } }]`;
}

/** A pattern of how a message begins. */
function wordsOf(message: string): string {
  return patternOf(message.slice(0, 60)).replace(/\$"$/, message.length > 60 ? '"' : '$"');
}

function patternOf(unit: string): string {
  return JSON.stringify(`^${unit.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);
}

function pairNotices(doubted: Doubted): readonly Notice[] {
  const { doubtful } = doubted;
  const reasons: readonly DoubtfulPair['why'][] = ['word', 'halves', 'numbers'];
  return reasons.flatMap((why) => {
    const names = doubtful.filter((d) => d.why === why);
    const [first] = names;
    return first === undefined ? [] : [pairNotice(doubted, why, first, names)];
  });
}

function pairNotice(
  doubted: Doubted,
  why: DoubtfulPair['why'],
  first: DoubtfulPair,
  names: readonly DoubtfulPair[],
): Notice {
  const { file, plan, result } = doubted;
  const texts = new Set(names.flatMap((n) => n.units));
  const count = result.unknown.reduce(
    (sum, u) => sum + (u.kind === 'unit' && texts.has(u.name) ? u.count : 0),
    0,
  );
  const unit = first.units[0] ?? first.pair;
  const others = texts.size === 1 ? '' : ` and ${texts.size - 1} more`;
  const said = `"${unit}"${others} ${place(plan)}`;
  const is: Readonly<Record<DoubtfulPair['why'], string>> = {
    word: `${said} may be an ordinary word: no half of such a pair is named, and it has no digit as RO1 has`,
    halves: `"${first.units.slice(0, 3).join('", "')}" ${place(plan)} would be a pair with more than two halves`,
    numbers: `${said} differs in every row, as row, process or error numbers do`,
  };
  const rule = `units: [{ pattern: ${patternOf(unit)}, pair: RO1${why === 'halves' ? '' : ', half: A'} }]`;
  return {
    id: 'unmatched-wording',
    what: `${is[why]}: unit not known${count > 0 ? `, ${plural(count, 'row')}` : ''}, the first in line ${first.first.line}.`,
    fix: `If it is a unit, add to the phrasebook ${rule}; if not, name the place of the unit: ${unitRule(doubted)}.`,
    setting: 'wording',
    count: Math.max(1, count),
    from: null,
    to: null,
    lines: [{ file, ...first.first }],
  };
}

/** Texts that no pattern knows as units, where half of all rows or more have them: why, and an example. */
function strangerNotices(doubted: Doubted): readonly Notice[] {
  const { plan, result, doubtful } = doubted;
  const refused = new Set(doubtful.flatMap((d) => d.units));
  const strangers = result.unknown.filter(({ kind, name }) => kind === 'unit' && !refused.has(name));
  const count = strangers.reduce((sum, { count: rows }) => sum + rows, 0);
  const [first] = strangers;
  if (first === undefined || count * 2 < result.rows.read) return [];
  const { name, firstLine } = first;
  const why = isSeverity(name.trim())
    ? `"${name}" ${place(plan)} is a severity: unit not known`
    : name === ''
      ? `${plan.importer.shape === 'text' ? 'Its lines name no unit' : 'Its rows name no unit'}, so their pair is not known`
      : strangers.length * 2 >= count && strangers.length >= leastNumbers
        ? `"${name}" and ${strangers.length - 1} more ${place(plan)} are too many for units, more like row, process or error numbers: unit not known`
        : `"${name}" ${place(plan)} does not look like a unit such as RO1-A, RO1/2 or RO1: unit not known`;
  const own = `add to the phrasebook units: [{ pattern: ${patternOf(name)}, pair: RO1, half: A }]`;
  return [
    {
      id: 'unmatched-wording',
      what: `${why}, ${plural(count, 'row')}, the first in line ${firstLine}.`,
      fix:
        name === '' || isSeverity(name.trim())
          ? `Name the place of the unit in the phrasebook: ${unitRule(doubted)}.`
          : `If it is a unit, ${own}; if not, name the place of the unit: ${unitRule(doubted)}.`,
      setting: 'wording',
      count,
      from: null,
      to: null,
      lines: [rowAt(doubted, firstLine)],
    },
  ];
}

/** Fewer may well be one of each unit. Chosen here. */
const leastNumbers = 20;

/** Many rows, and none of use. */
function uselessNotices(doubted: Doubted): readonly Notice[] {
  const { plan, result } = doubted;
  const { read, used, unchanged } = result.rows;
  const [most] = result.unknown;
  if (read < manyRows || used + unchanged > 0 || most === undefined) return [];
  const isUnit = most.kind === 'unit';
  const where = isUnit ? place(plan) : plan.importer.shape === 'text' ? 'in its lines' : 'in its rows';
  const rule = isUnit
    ? unitRule(doubted)
    : most.kind === 'message'
      ? `messages: [{ when: ${wordsOf(most.name)}, signal: SIGNAL, value: VALUE }]`
      : `parameters: { ${JSON.stringify(most.name)}: { signal: SIGNAL } }`;
  return [
    {
      id: 'unmatched-wording',
      what: `None of its ${read} rows could be used: "${most.name.slice(0, 60)}" ${where} was not recognised, ${plural(most.count, 'row')}, the first in line ${most.firstLine}${moreText(result.unknown.length - 1)}.`,
      fix: `Add their meaning to the phrasebook: ${rule}.`,
      setting: 'wording',
      count: read,
      from: null,
      to: null,
      lines: [rowAt(doubted, most.firstLine)],
    },
  ];
}

/** The row of a line, as it was read. */
function rowAt({ file, result }: Doubted, line: number): SourceLine {
  return { file, line, text: result.unknownRows.get(line) ?? '' };
}

function moreText(more: number): string {
  return more === 0 ? '' : `; and ${plural(more, 'more wording')}`;
}

function plural(count: number, word: string): string {
  return count === 1 ? `one ${word}` : `${count} ${word}s`;
}
