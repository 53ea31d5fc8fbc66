import { isMark, join } from '../bytes/bytes.ts';
import type { RecordedEntry } from '../changes/recorded.ts';
import { addToBatch } from './batch-builder.ts';
import { numbersOfRow } from './batch-gauges.ts';
import { setRow } from './batch-place.ts';
import { rowsMatching } from './batches.ts';
import { findCells } from './cells.ts';
import { replaceInBatch } from './change-batch.ts';
import { type Chunk, chunkOf } from './chunk.ts';
import type { Lane, LaneOptions } from './lane.ts';
import { type LaneState, laneState } from './lane-state.ts';
import type { RowTemplate } from './row-template.ts';
import { addShape, findShape, shapedEntry } from './shape-store.ts';
import { addTemplate, findByCells, findByLine, findTemplate, matches } from './template-store.ts';

const lineFeed = 10;
/** So much goes to the general reader at once where a row is irregular. */
const blockBytes = 65_536;
const longestLine = 1_048_576;

/**
 * Reads a table as bytes. A row whose bytes, but for stamp and gauges, were read before is taken by its template: nothing of
 * it becomes text. Rows mostly come in the order of the poll before: each template knows the one that followed it. A new row
 * without quotes is split and taken as text; what is irregular goes to the general reader, block by block.
 */
export function byteLane(options: LaneOptions): Lane {
  const state = laneState(options);
  return {
    push: (chunk) => takeChunk(state, new Uint8Array(chunk.buffer, chunk.byteOffset, chunk.length)),
    settle: () => !state.general.isWaiting(),
    end() {
      const { general, decode, line, rest, isEndless } = state;
      if (!isEndless) general.goOnAt(line);
      general.push(decode(line === 1 && isMark(rest) ? rest.subarray(3) : rest));
      general.end();
    },
  };
}

function takeChunk(state: LaneState, bytes: Uint8Array): void {
  const first = bytes.indexOf(lineFeed) + 1;
  if (first === 0) {
    state.rest = join(state.rest, bytes);
    if (state.rest.length > longestLine) takeEndless(state);
    return;
  }
  const begun = state.rest.length > 0 || state.isEndless ? first : 0;
  if (begun > 0) {
    state.rest = join(state.rest, bytes.subarray(0, begun));
    if (state.isEndless) takeEndless(state);
    else takeLines(state, chunkOf(state.rest), 0, state.rest.length);
    state.isEndless = false;
  }
  const to = bytes.lastIndexOf(lineFeed) + 1;
  takeLines(state, chunkOf(bytes), begun, to);
  state.rest = bytes.slice(to);
}

/** A line that is longer than any row goes to the general reader as it comes, which keeps only its start. */
function takeEndless(state: LaneState): void {
  const { general, decode, rest } = state;
  if (!state.isEndless) general.goOnAt(state.line);
  general.push(decode(rest));
  state.line = general.line();
  state.rest = new Uint8Array(0);
  state.isEndless = true;
}

/** Takes whole lines. */
function takeLines(state: LaneState, chunk: Chunk, from: number, to: number): void {
  const { bytes } = chunk;
  const { general } = state;
  let at = state.line === 1 && isMark(bytes) ? 3 : from;
  while (at < to) {
    const next = state.before?.next ?? null;
    const rows = next === null ? 0 : rowsMatching(next, state, chunk, at, to);
    const known = rows > 0 ? null : expectedRow(state, chunk, at);
    if (next !== null && rows > 0) at = takeBatch(state, next, rows, chunk, at);
    else if (known !== null) at = takeKnown(state, known, chunk, at);
    else at = general.isWaiting() ? takeBlock(state, bytes, at, to) : takeLine(state, chunk, at, to);
  }
  flush(state);
}

/** The row that is expected next, or came in its place before, if the bytes from `at` on match it. */
function expectedRow({ before, templates }: LaneState, chunk: Chunk, at: number): RowTemplate | null {
  const next = before?.next ?? null;
  if (next === null || matches(templates, next, chunk, at)) return next;
  return next.instead !== null && matches(templates, next.instead, chunk, at) ? next.instead : null;
}

/** The bytes are about to go: what was kept of them becomes text. */
function flush({ replay, row, place }: LaneState): void {
  replay.flush();
  row.flush();
  place.row.flush();
}

/** Takes so many rows of a batch, from one of them on, that just matched; gives where the next row begins. */
function takeBatch(state: LaneState, first: RowTemplate, rows: number, { bytes }: Chunk, at: number): number {
  const { templates, row, replay, stamps, place } = state;
  const { batch } = first;
  if (batch === null) return at;
  const time = stamps.take(rows);
  place.bytes = bytes;
  place.first = first.place;
  place.end = first.place + rows;
  place.from = at - (batch.edges[place.first] ?? 0);
  place.line = state.line - place.first;
  if (!replay.takeBatch(batch, time, place))
    for (let index = place.first; index < place.end; index += 1) {
      setRow(row, place, batch, index);
      numbersOfRow(batch, index, templates.numbers);
      replay.takeRow(row, time, batch.rows[index]?.recorded ?? [], templates.numbers);
    }
  state.before = batch.rows[place.end - 1] ?? null;
  state.line += rows;
  return place.from + (batch.edges[place.end] ?? 0);
}

/** Takes a row that just matched; gives where the next begins. */
function takeKnown(state: LaneState, found: RowTemplate, chunk: Chunk, at: number): number {
  const { templates, row, replay, stamps } = state;
  const { end } = templates;
  row.set(chunk.bytes, at, end, state.line);
  replay.takeRow(row, stamps.take(), found.recorded, templates.numbers);
  state.line += 1;
  goOnFrom(state, found, chunk, at, end);
  return end;
}

/** Takes a row that is known but for the digits of its message. */
function takeShaped(state: LaneState, found: RecordedEntry, chunk: Chunk, at: number, end: number): number {
  const { templates, row, replay, stamps, cells, decode, shapes } = state;
  const recorded = [shapedEntry(shapes, found, chunk, cells, decode)];
  row.set(chunk.bytes, at, end, state.line);
  replay.takeRow(row, stamps.take(), recorded, templates.numbers);
  state.line += 1;
  addTemplate(templates, recorded, chunk, at, end, cells);
  return end;
}

/** Takes one line that is not the row expected. */
function takeLine(state: LaneState, chunk: Chunk, at: number, to: number): number {
  const { bytes } = chunk;
  const { templates, shapes, row, cells, stamps, places } = state;
  const byLine = findByLine(templates, chunk, at);
  if (byLine !== null) return takeKnown(state, byLine, chunk, at);
  const end = findCells(bytes, at, state.ends, cells);
  if (end < 0) return takeBlock(state, bytes, at, to);
  const byShape = findShape(shapes, chunk, at + stamps.length(), end, cells);
  const isAlike = byShape !== null && cells.to[places.stampLast] === at + stamps.length();
  if (isAlike && stamps.fits(chunk, at)) return takeShaped(state, byShape, chunk, at, end);
  // Zeros before a line: the general reader knows them.
  if (bytes.subarray(at, end).includes(0)) return takeBlock(state, bytes, at, to);
  const byCells = findByCells(templates, chunk, at, cells);
  if (byCells !== null) return takeKnown(state, byCells, chunk, at);
  row.set(bytes, at, end, state.line);
  state.line += 1;
  if (row.isBlank()) return end;
  const recorded = state.take(row);
  if (recorded === null || cells.count <= places.stampLast) return end;
  const [stampAt, stampEnd] = [cells.from[places.stampFirst] ?? 0, cells.to[places.stampLast] ?? 0];
  // Where the stamp is written as those before, the row is new; with another day it may be one that is known.
  const isUsual = stampEnd - stampAt === stamps.length() && stamps.fits(chunk, stampAt);
  const isStamp = isUsual || stamps.learn(bytes, stampAt, stampEnd);
  const known = isStamp && !isUsual ? findTemplate(templates, chunk, at, cells) : null;
  const template = isStamp ? (known ?? addTemplate(templates, recorded, chunk, at, end, cells)) : null;
  const [entry] = recorded;
  if (isStamp && entry?.kind === 'entry' && !entry.digitsMatter)
    addShape(shapes, entry, chunk, stampEnd, end, cells);
  if (template === null) state.before = null;
  else goOnFrom(state, template, chunk, at, end);
  return end;
}

/** The next row is expected to be the one that followed this one the time before. */
function goOnFrom(state: LaneState, row: RowTemplate, chunk: Chunk, at: number, end: number): void {
  const { before, isPeriodic, builder, templates } = state;
  if (!isPeriodic) return;
  if (before !== null) {
    replaceInBatch(before, row, templates, chunk, at, end);
    if (before.next !== row) followedBy(before, row);
  }
  addToBatch(builder, row, templates, chunk, at, end);
  state.before = row;
}

/** From now on another row is expected after this one than before. */
function followedBy(before: RowTemplate, row: RowTemplate): void {
  if (before.next !== null) {
    before.next.instead = row;
    row.instead = before.next;
  }
  before.next = row;
}

/** Gives a block of whole lines to the general reader; what it cannot end goes on with the next. */
function takeBlock(state: LaneState, bytes: Uint8Array, at: number, to: number): number {
  const { general, decode } = state;
  const last = bytes.lastIndexOf(lineFeed, Math.min(to, at + blockBytes) - 1);
  const end = last < at ? bytes.indexOf(lineFeed, at) + 1 : last + 1;
  flush(state);
  // Where it waits for the end of a row it has counted on by itself.
  if (!general.isWaiting()) general.goOnAt(state.line);
  general.push(decode(bytes.subarray(at, end)));
  state.line = general.line();
  state.before = null;
  return end;
}
