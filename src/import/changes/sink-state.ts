import type { Change, RowCounts, Stream, UnknownWording } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import type { Row } from '../bytes/row.ts';
import type { EntryReader } from '../phrasebook/entries.ts';
import { isIgnored, type Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { subjectOf, type UnitParts } from '../phrasebook/subjects.ts';
import { endRound, type Rounds } from '../row-cache/together.ts';
import type { GaugeReader } from './gauges.ts';
import type { Rejected } from './row-notices.ts';
import type { Said } from './said.ts';
import { newUnit, type Unit, unitText } from './units.ts';

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

interface Wording {
  readonly kind: UnknownWording['kind'];
  readonly name: string;
  readonly values: Set<string>;
  count: number;
  readonly firstLine: number;
  lastLine: number;
}

/** Wording as it is found: what it is listed as, what it names, and the value it came with. */
export interface Found extends Pick<UnknownWording, 'wording' | 'kind' | 'name'> {
  readonly value?: string;
}

/** Everything a sink knows of its file. */
export interface State {
  readonly phrasebook: Phrasebook;
  /** How many rows ended in each way. */
  readonly tally: Record<End, number>;
  /** By every way in which the rows name them. */
  readonly units: Map<string, Unit>;
  /** Each unit once; its index is the stream's. */
  readonly unitList: Unit[];
  readonly changes: Change[];
  readonly wordings: Map<string, Wording>;
  /** Which unknown wordings the site ignores. */
  readonly meaningless: Map<string, boolean>;
  readonly rejected: Rejected[];
  readonly unmatchedLines: { readonly line: number; readonly text: string }[];
  readonly gauges: GaugeReader[];
  readonly entries: EntryReader;
  behind: number;
  /** What the row said so far, and whether that is all there is to it. */
  said: Said[];
  isPlain: boolean;
  row: Row;
  end: End;
  /** The last line of the file so far: its rows may come sorted by time. */
  lastLine: number;
  /** The rejected row that stands last in the file. */
  lastRejected: Rejected | undefined;
  readonly rounds: Rounds;
}

/** Before the first row. */
export const noRow: Row = {
  line: 0,
  isCut: false,
  cell: () => '',
  width: () => 0,
  text: () => '',
  ownText: () => '',
  keep: () => undefined,
};
const mostWordings = 1000;
/** No site has as many controllers: the rest are taken for one unit that is not known, so that memory stays bounded. */
export const mostUnits = 10_000;
const mostValues = 8;
const mostLines = 5;

/** Takes up the next row. */
export function beginRow(state: State, row: Row, isLearnt: boolean): void {
  endRound(state.rounds);
  state.row = row;
  state.end = ends.none;
  state.isPlain = isLearnt;
  if (isLearnt) state.said = [];
  state.lastLine = Math.max(state.lastLine, row.line);
}

/** Ends the row in exactly one count. */
export function finishRow(state: State): void {
  const { end, row, tally, unmatchedLines } = state;
  tally[end] += 1;
  if (end === ends.unmatched && unmatchedLines.length < mostLines) {
    unmatchedLines.push({ line: row.line, text: row.ownText() });
  }
}

/** Notes what was found in the row; the highest counts. */
export function mark(state: State, end: End): void {
  if (end > state.end) state.end = end;
}

/** The rows so far by the five counts. A row in which nothing at all was found says nothing new: an empty cell is no reading. */
export function countsOf({ tally }: State): RowCounts {
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

/**
 * Counts wording that is not known, once for a row; the number of different ones is bounded. New wording at the end of a
 * row that is cut off is no wording.
 */
export function unmatched(state: State, { wording, kind, name, value }: Found): void {
  const { wordings, row } = state;
  state.isPlain = false;
  if (isMeaningless(state, wording)) {
    mark(state, ends.ignored);
    return;
  }
  if (row.isCut && !wordings.has(wording)) {
    loseCell(state);
    return;
  }
  mark(state, ends.unmatched);
  const isListed = wordings.has(wording) || wordings.size < mostWordings;
  const listed = isListed ? wording : '(further wordings)';
  const known = wordings.get(listed) ?? newWording(kind, isListed ? name : listed, row.line);
  if (known.count === 0) wordings.set(detached(listed), known);
  if (known.lastLine !== row.line) known.count += 1;
  known.lastLine = row.line;
  if (value !== undefined && known.values.size < mostValues) known.values.add(detached(value));
}

function newWording(kind: Wording['kind'], name: string, firstLine: number): Wording {
  return { kind, name: detached(name), values: new Set(), count: 0, firstLine, lastLine: 0 };
}

/** Wording as it is listed ("light = n/a", "unit P7") that the site says to ignore. */
function isMeaningless({ phrasebook, meaningless }: State, wording: string): boolean {
  if (phrasebook.ignore.length === 0) return false;
  const known = meaningless.get(wording);
  if (known !== undefined) return known;
  const found = isIgnored(phrasebook, wording);
  if (meaningless.size < mostWordings) meaningless.set(detached(wording), found);
  return found;
}

/** The last cell of the file is cut off: what it would have said is lost. What its row said before it stands. */
export function loseCell(state: State): void {
  const { row } = state;
  mark(state, ends.lost);
  state.isPlain = false;
  const text = row.ownText();
  state.lastRejected = { line: row.line, text, isCut: true, what: 'The row is cut off.', fix: '' };
}

/** The row can not be read. */
export function rejectRow(state: State, what: string, fix: string): void {
  const { row, rejected } = state;
  state.end = ends.rejected;
  state.isPlain = false;
  const found = { line: row.line, text: row.ownText(), isCut: row.isCut, what, fix };
  if (row.line === state.lastLine) state.lastRejected = found;
  if (rejected.length < mostLines) rejected.push(found);
}

/** The unit of a row; made when first named. */
export function unitOf(state: State, unit: string, parts: UnitParts | undefined, kind: Stream['kind']): Unit {
  const key = parts === undefined ? unit : `${parts.unit}\n${parts.half}\n${parts.role}`;
  const known = state.units.get(key);
  if (known !== undefined) return known;
  if (state.unitList.length >= mostUnits) return furtherUnits(state, kind);
  const subject = subjectOf(state.phrasebook, parts ?? { unit, half: '', role: '' });
  // A row that names a half is that half's, whatever role it states: its stream goes on through every switchover.
  const isState = parts !== undefined && parts.role !== '' && subject !== null && subject.half !== null;
  const made = isState
    ? unitOf(state, unit, { ...parts, role: '' }, kind)
    : newUnit(detached(unitText(unit, parts)), subject, state.unitList.length, kind);
  if (!isState) {
    state.unitList.push(made);
    made.saysHalf = otherHalf(state.phrasebook, parts);
  }
  state.units.set(detached(key), made);
  return made;
}

/** The half that a unit's text says, where the column beside it says another. */
function otherHalf(phrasebook: Phrasebook, parts: UnitParts | undefined): string | null {
  if (parts === undefined || parts.half === '') return null;
  const said = subjectOf(phrasebook, { unit: parts.unit, half: '', role: '' })?.half ?? null;
  return said !== null && said.toLowerCase() !== parts.half.trim().toLowerCase() ? said : null;
}

/** What the units past the last are listed as. */
export const furtherText = '(further units)';

function furtherUnits(state: State, kind: Stream['kind']): Unit {
  const text = furtherText;
  const known = state.units.get(text);
  if (known !== undefined) return known;
  const made = newUnit(text, null, state.unitList.length, kind);
  state.unitList.push(made);
  state.units.set(text, made);
  return made;
}

/** Keeps a change, with the line it stands in. */
export function push(state: State, change: Omit<Change, 'line' | 'text' | 'count'>): void {
  mark(state, ends.used);
  const { kind, time, earliest, subject, signal, value, before, stream } = change;
  const { row } = state;
  // Field by field: a copy of all at once takes ten times as long.
  state.changes.push({
    kind,
    time,
    earliest,
    subject,
    signal,
    value,
    before,
    stream,
    line: row.line,
    text: row.ownText(),
    count: 1,
  });
}
