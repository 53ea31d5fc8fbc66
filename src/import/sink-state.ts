import type { Change, RowCounts, Stream } from '../vocabulary.ts';
import { detached } from './decode.ts';
import type { EntryReader } from './entries.ts';
import type { GaugeReader } from './gauges.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import type { Row } from './row.ts';
import type { Rejected } from './row-notices.ts';
import { subjectOf, type UnitParts } from './subjects.ts';
import { newUnit, type Unit, unitText } from './units.ts';

/** How a row ends; of several values in one row the highest counts. */
const ranks = { none: 0, ignored: 1, unchanged: 2, unmatched: 3, used: 4, rejected: 5 } as const;
type Outcome = keyof typeof ranks;

/** Everything a sink knows of its file. */
export interface State {
  readonly phrasebook: Phrasebook;
  readonly counts: { -readonly [key in keyof RowCounts]: RowCounts[key] };
  /** By every way in which the rows name them. */
  readonly units: Map<string, Unit>;
  /** Each unit once; its index is the stream's. */
  readonly unitList: Unit[];
  readonly changes: Change[];
  readonly wordings: Map<string, { count: number; readonly firstLine: number }>;
  readonly rejected: Rejected[];
  readonly unmatchedLines: { readonly line: number; readonly text: string }[];
  readonly gauges: GaugeReader[];
  readonly entries: EntryReader;
  behind: number;
  row: Row;
  outcome: Outcome;
  lastRejected: Rejected | undefined;
  lastEntry: { readonly key: string; readonly change: number } | undefined;
}

/** Before the first row. */
export const noRow: Row = { line: 0, cell: () => '', width: () => 0, text: () => '' };
const mostWordings = 1000;
const mostLines = 5;

/** Takes up the next row. */
export function beginRow(state: State, row: Row): void {
  state.row = row;
  state.outcome = 'none';
  // Rows may come sorted: the file's last row is the one on its last line.
  if (row.line > (state.lastRejected?.line ?? 0)) state.lastRejected = undefined;
  state.counts.read += 1;
}

/** Ends the row in exactly one count. */
export function finishRow(state: State): void {
  const { outcome, row, counts, unmatchedLines } = state;
  // A row in which nothing at all was found says nothing new: an empty cell is no reading.
  counts[outcome === 'none' ? 'unchanged' : outcome] += 1;
  if (outcome === 'unmatched' && unmatchedLines.length < mostLines) {
    unmatchedLines.push({ line: row.line, text: detached(row.text()) });
  }
}

/** Notes what was found in the row; the highest counts. */
export function mark(state: State, outcome: Outcome): void {
  if (ranks[outcome] > ranks[state.outcome]) state.outcome = outcome;
}

/** Counts wording that is not known; the number of different ones is bounded. */
export function unmatched(state: State, wording: string): void {
  mark(state, 'unmatched');
  const { wordings, row } = state;
  const name = wordings.has(wording) || wordings.size < mostWordings ? wording : '(further wordings)';
  const known = wordings.get(name);
  if (known === undefined) wordings.set(detached(name), { count: 1, firstLine: row.line });
  else known.count += 1;
}

/** The row can not be read. */
export function rejectRow(state: State, what: string, fix: string): void {
  const { row, rejected } = state;
  state.outcome = 'rejected';
  state.lastRejected = { line: row.line, text: detached(row.text()), what, fix };
  if (rejected.length < mostLines) rejected.push(state.lastRejected);
}

/** The unit of a row; made when first named. */
export function unitOf(state: State, unit: string, parts: UnitParts | undefined, kind: Stream['kind']): Unit {
  const key = parts === undefined ? unit : `${parts.unit}\n${parts.half}\n${parts.role}`;
  const known = state.units.get(key);
  if (known !== undefined) return known;
  const subject = subjectOf(state.phrasebook, parts ?? { unit, half: '', role: '' });
  // A row that names a half is that half's, whatever role it states: its stream goes on through every switchover.
  const isState = parts !== undefined && parts.role !== '' && subject !== null && subject.half !== null;
  const made = isState
    ? unitOf(state, unit, { ...parts, role: '' }, kind)
    : newUnit(detached(unitText(unit, parts)), subject, state.unitList.length, kind);
  if (!isState) state.unitList.push(made);
  state.units.set(detached(key), made);
  return made;
}

/** Keeps a change, with the line it stands in. */
export function push(state: State, change: Omit<Change, 'line' | 'text' | 'count'>): void {
  mark(state, 'used');
  state.changes.push({ ...change, line: state.row.line, text: detached(state.row.text()), count: 1 });
}
