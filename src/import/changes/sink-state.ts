import { type ChangeColumns, changeColumns } from '../../change-columns.ts';
import type { Change, RowCounts, Setting, UnknownWording } from '../../vocabulary.ts';
import type { Row } from '../bytes/row.ts';
import { type EntryReader, entryReader } from '../phrasebook/entries.ts';
import type { FileRule, FileSubject, Phrasebook, UsedRules } from '../phrasebook/phrasebook-rules.ts';
import { type Conditions, conditionsOf } from './conditions.ts';
import type { GaugeReader } from './gauges.ts';
import { allMinutes, countRow, type MinutesLeft } from './not-understood.ts';
import { noQualities, type Qualities } from './qualities.ts';
import type { Recorded } from './recorded.ts';
import type { Rejected } from './row-notices.ts';
import type { UnclearRule } from './unclear-rules.ts';
import type { Unit } from './units.ts';
import { noWordingRows, type WordingRows } from './wording-rows.ts';

/** How a row ends; of several values in one row the highest counts. */
export const ends = {
  none: 0,
  ignored: 1,
  unchanged: 2,
  unmatched: 3,
  lost: 4,
  used: 5,
  rejected: 6,
} as const;
type End = (typeof ends)[keyof typeof ends];

/** Wording that is not known, and how often it came. */
export interface Wording {
  readonly kind: UnknownWording['kind'];
  readonly name: string;
  readonly values: Set<string>;
  count: number;
  readonly firstLine: number;
  lastLine: number;
}

/** What a row cache that shares the state has to do before the sink itself goes on. */
export interface CacheDuties {
  readonly beforeRow: () => void;
  readonly beforeClose: () => void;
}

/** The file that is read: its name, what the phrasebook says of it, and where rules are noted that are of use. */
export interface SinkFile {
  readonly name: string;
  readonly rule: FileRule | undefined;
  readonly used: UsedRules;
}

/** What is known of names before the rows of a file are read. */
export interface PairNames {
  /** Names of pairs of which other files name a half. */
  readonly knownPairs: ReadonlySet<string>;
  /** Names that look like one of a pair, and were found to be none. */
  readonly refusedPairs: ReadonlySet<string>;
  /** A column says that it holds the names of pairs. */
  readonly hasPairColumn: boolean;
}

const noNames: PairNames = { knownPairs: new Set(), refusedPairs: new Set(), hasPairColumn: false };

/** Everything a sink knows of its file. */
export interface SinkState extends PairNames {
  readonly phrasebook: Phrasebook;
  readonly used: UsedRules;
  readonly conditions: Conditions;
  readonly qualities: Qualities;
  /** Whose file it is, where a rule says so. */
  readonly of: FileSubject | undefined;
  /** How many rows ended in each way. */
  readonly tally: Record<End, number>;
  /** By every way in which the rows name them. */
  readonly units: Map<string, Unit>;
  /** Each unit once; its index is the stream's. */
  readonly unitList: Unit[];
  readonly changes: ChangeColumns;
  readonly wordings: Map<string, Wording>;
  /** Which unknown wordings the site ignores. */
  readonly meaningless: Map<string, boolean>;
  /** Messages that a rule fits and that say nothing all the same, by the rule and what it lacks. */
  readonly unclear: Map<string, UnclearRule>;
  readonly rejected: Rejected[];
  readonly unmatchedLines: { readonly line: number; readonly text: string }[];
  /** The rows in which wordings that are not known first stand, by their lines, as long as they are not too much text. */
  readonly wordingRows: WordingRows;
  readonly gauges: GaugeReader[];
  readonly entries: EntryReader;
  /** How many readings were earlier than one of their parameter that stands before them. */
  outOfOrder: number;
  /** What was found in the row so far, and whether a row of the same content would give just that again. */
  recorded: Recorded[];
  isRepeatable: boolean;
  row: Row;
  end: End;
  /** The row's last wording that was not understood: its unit, and when. */
  readonly unknown: { unit: Unit | null; at: number; share: keyof MinutesLeft };
  readonly minutesLeft: MinutesLeft;
  /** The last line of the file so far: its rows may come sorted by time. */
  lastLine: number;
  /** The rejected row that stands last in the file. */
  lastRejected: Rejected | undefined;
  cache: CacheDuties;
  isClosed: boolean;
}

/** Before the first row. */
const noRow: Row = {
  line: 0,
  isCut: false,
  cell: () => '',
  width: () => 0,
  text: () => '',
  ownText: () => '',
  putText: () => undefined,
  keep: () => undefined,
};
const mostLines = 5;

const noCache: CacheDuties = { beforeRow: () => undefined, beforeClose: () => undefined };

const noFile: SinkFile = { name: '', rule: undefined, used: new Set() };

/** Nothing is read yet. */
export function sinkState(
  phrasebook: Phrasebook,
  { name, rule, used }: SinkFile = noFile,
  names: PairNames = noNames,
): SinkState {
  return {
    ...names,
    phrasebook,
    used,
    conditions: conditionsOf(rule),
    qualities: noQualities(),
    of: rule?.of,
    tally: { 0: 0, 1: 0, 2: 0, 3: 0, 4: 0, 5: 0, 6: 0 },
    units: new Map(),
    unitList: [],
    outOfOrder: 0,
    changes: changeColumns(),
    wordings: new Map(),
    meaningless: new Map(),
    unclear: new Map(),
    rejected: [],
    unmatchedLines: [],
    wordingRows: noWordingRows(),
    gauges: [],
    entries: entryReader(phrasebook, name, used),
    recorded: [],
    isRepeatable: true,
    unknown: { unit: null, at: 0, share: 'other' },
    minutesLeft: allMinutes(),
    row: noRow,
    end: ends.none,
    lastLine: 0,
    lastRejected: undefined,
    cache: noCache,
    isClosed: false,
  };
}

/** Throws Error, for a defect, where the sink was closed. */
export function checkOpen({ isClosed }: SinkState): void {
  if (isClosed) throw new Error('A row was taken after the sink of its file was closed.');
}

/** Takes up the next row. */
export function beginRow(state: SinkState, row: Row, isRecorded: boolean): void {
  checkOpen(state);
  state.cache.beforeRow();
  state.row = row;
  state.end = ends.none;
  state.isRepeatable = isRecorded;
  if (isRecorded) state.recorded = [];
  state.lastLine = Math.max(state.lastLine, row.line);
}

/** Ends the row in exactly one count. */
export function finishRow(state: SinkState): void {
  const { end, row, tally, unmatchedLines, unknown, minutesLeft } = state;
  tally[end] += 1;
  const { unit, at, share } = unknown;
  if (end !== ends.unmatched || unit === null) return;
  unit.notUnderstood = countRow(unit.notUnderstood, at, row, minutesLeft, share);
  if (unmatchedLines.length < mostLines) unmatchedLines.push({ line: row.line, text: row.ownText() });
}

/** Notes what was found in the row; the highest counts. */
export function mark(state: SinkState, end: End): void {
  if (end > state.end) state.end = end;
}

/** The rows so far by the five counts. A row in which nothing at all was found says nothing new: an empty cell is no reading. */
export function countsOf({ tally }: SinkState): RowCounts {
  const { none, ignored, unchanged, unmatched: unknown, lost, used, rejected } = ends;
  const sum = (...some: readonly End[]): number => some.reduce<number>((all, end) => all + tally[end], 0);
  return {
    read: sum(none, ignored, unchanged, unknown, lost, used, rejected),
    used: tally[used],
    unchanged: sum(none, unchanged),
    ignored: tally[ignored],
    unmatched: tally[unknown],
    rejected: sum(lost, rejected),
  };
}

/** The last cell of the file is cut off: what it would have said is lost. What its row said before it stands. */
export function loseCell(state: SinkState): void {
  const { row } = state;
  mark(state, ends.lost);
  state.isRepeatable = false;
  const text = row.ownText();
  state.lastRejected = { line: row.line, text, isCut: true, what: 'The row is cut off.', fix: '' };
}

/** The row cannot be read. */
export function rejectRow(state: SinkState, what: string, fix: string, setting?: Setting): void {
  const { row, rejected } = state;
  state.end = ends.rejected;
  state.isRepeatable = false;
  const said = setting === undefined ? { what, fix } : { what, fix, setting };
  const found = { line: row.line, text: row.ownText(), isCut: row.isCut, ...said };
  if (row.line === state.lastLine) state.lastRejected = found;
  if (rejected.length < mostLines) rejected.push(found);
}

/** Keeps what is new in the row. */
export function push(state: SinkState, change: Omit<Change, 'line' | 'text' | 'count'>): void {
  mark(state, ends.used);
  keepChange(state, state.row, change);
}

/** Keeps a change with the line it stands in, which counts as it did before. */
export function keepChange(
  state: SinkState,
  row: Row,
  change: Omit<Change, 'line' | 'text' | 'count'>,
): void {
  state.changes.push(change, row.line, row.putText);
}
