import type { Recorded, RecordedReading } from '../changes/recorded.ts';
import type { ByteStamps } from './byte-stamps.ts';
import type { Cells } from './cells.ts';
import type { Chunk } from './chunk.ts';
import { endOfNumber, readNumber } from './gauge-number.ts';
import { addLiteral, holds, type Literals, noLiterals } from './literal.ts';
import { type ColumnPlaces, type RowTemplate, valueMarks } from './row-template.ts';

/** The templates of a file, by what their rows hold besides stamp and values: unit and parameter, in most files. */
export interface TemplateStore {
  readonly places: ColumnPlaces;
  /** Which columns are of polled values: a table may have hundreds. */
  readonly isValue: Uint8Array;
  readonly stamps: ByteStamps;
  readonly literals: Literals;
  /** The byte of a decimal comma; -1 where a comma separates cells. */
  readonly comma: number;
  readonly buckets: Map<number, RowTemplate[]>;
  /** Rows that begin with their stamp and hold no values, by all the bytes after it. */
  readonly lines: Map<number, RowTemplate>;
  /** Such rows that came once: half of their key, in the place that the other half of it names. */
  readonly seenOnce: Uint16Array;
  count: number;
  /** Of the row that matched last: where it ends, and the numbers of its gauges. */
  end: number;
  readonly numbers: Float64Array;
}

const mostTemplates = 50_000;
const mostAlike = 64;
/** Words of four bytes, so that wide rows take no more than a few megabytes. Chosen here. */
const mostWords = 4_000_000;
const mostGauges = 64;
const placesSeen = 65_536;
const [comma, lineFeed] = [44, 10];

/** No template yet. */
export function templateStore(places: ColumnPlaces, stamps: ByteStamps, delimiter: number): TemplateStore {
  const numbers = new Float64Array(mostGauges);
  return {
    places,
    isValue: valueMarks(places),
    stamps,
    literals: noLiterals(),
    comma: delimiter === comma ? -1 : comma,
    buckets: new Map(),
    lines: new Map(),
    seenOnce: new Uint16Array(isByLine(places) ? placesSeen : 0),
    count: 0,
    end: 0,
    numbers,
  };
}

/** True if the bytes from `from` on are that row at another instant; then `end` and `numbers` are those of this one. */
export function matches(store: TemplateStore, row: RowTemplate, chunk: Chunk, from: number): boolean {
  const { before } = row;
  if (!holds(chunk.view, from, store.literals.words, before)) return false;
  const stampAt = from + before.length;
  return (
    matchesAfterStamp(store, row, chunk, stampAt + store.stamps.length()) && store.stamps.fits(chunk, stampAt)
  );
}

/** The same from the end of its stamp on. */
export function matchesAfterStamp(
  store: TemplateStore,
  { before, parts }: RowTemplate,
  chunk: Chunk,
  from: number,
): boolean {
  const { words } = store.literals;
  let at = from;
  for (let part = 0; part < parts.length; part += 1) {
    if (part > 0) {
      const numberEnd = readNumber(store, chunk.bytes, at, part - 1);
      if (numberEnd === at) return false;
      at = numberEnd;
    }
    const text = parts[part] ?? before;
    if (!holds(chunk.view, at, words, text)) return false;
    at += text.length;
  }
  store.end = at;
  return true;
}

/** The template that the bytes from `from` on match; `null` if none. */
export function findTemplate(
  store: TemplateStore,
  chunk: Chunk,
  from: number,
  cells: Cells,
): RowTemplate | null {
  return isByLine(store.places) ? findByLine(store, chunk, from) : findByCells(store, chunk, from, cells);
}

/** The same for rows that are found by their cells but for stamp and values; `null` for all others. */
export function findByCells(
  store: TemplateStore,
  chunk: Chunk,
  from: number,
  cells: Cells,
): RowTemplate | null {
  if (store.stamps.length() === 0 || isByLine(store.places)) return null;
  const alike = store.buckets.get(keyOf(store, chunk.bytes, cells)) ?? [];
  return alike.find((row) => matches(store, row, chunk, from)) ?? null;
}

/** The same for rows that begin with their stamp and hold no values: their cells need not be found. */
export function findByLine(store: TemplateStore, chunk: Chunk, from: number): RowTemplate | null {
  const length = store.stamps.length();
  if (length === 0 || !isByLine(store.places)) return null;
  const end = chunk.bytes.indexOf(lineFeed, from + length) + 1;
  const row = end > 0 ? store.lines.get(smallKey(keyOfBytes(chunk.view, from + length, end))) : undefined;
  return row !== undefined && matches(store, row, chunk, from) ? row : null;
}

/** True where rows begin with their stamp and hold no values: they are found by all the bytes after it. */
export function isByLine({ stampFirst, stampLast, values }: ColumnPlaces): boolean {
  return values.length === 0 && stampFirst === 0 && stampLast < Number.MAX_SAFE_INTEGER;
}

function keyOfBytes(view: DataView, from: number, to: number): number {
  let hash = to - from;
  let at = from;
  for (; at + 4 <= to; at += 4) hash = Math.imul(hash ^ view.getInt32(at, true), 16_777_619) ^ (hash >>> 15);
  for (; at < to; at += 1) hash = Math.imul(hash ^ view.getUint8(at), 16_777_619);
  return hash;
}

/** A small integer needs no object of its own in a map. */
function smallKey(hash: number): number {
  return hash & 0x3fff_ffff;
}

/** Keeps a row that ends at `end`, and what is recorded of it; `null` if it cannot be a template, or is one too many. */
export function addTemplate(
  store: TemplateStore,
  recorded: readonly Recorded[],
  { bytes, view }: Chunk,
  from: number,
  end: number,
  cells: Cells,
): RowTemplate | null {
  const isFull = store.count >= mostTemplates || store.literals.used >= mostWords;
  if (isFull || isFirst(store, view, from, end)) return null;
  const made = templateOf(store, recorded, bytes, from, end, cells);
  if (made === null || made.parts.length > mostGauges) return null;
  if (isByLine(store.places))
    store.lines.set(smallKey(keyOfBytes(view, from + store.stamps.length(), end)), made);
  else {
    const key = keyOf(store, bytes, cells);
    const alike = store.buckets.get(key) ?? [];
    // All rows of a wide table are alike: one that takes the place of another is of a later state.
    alike[alike.length < mostAlike ? alike.length : store.count % mostAlike] = made;
    if (alike.length === 1) store.buckets.set(key, alike);
  }
  store.count += 1;
  return made;
}

/**
 * True for a row that is found by all its bytes and comes for the first time, as far as can be told: many messages hold a
 * number of their own and never come again.
 */
function isFirst(
  { places, stamps, seenOnce }: TemplateStore,
  view: DataView,
  from: number,
  end: number,
): boolean {
  if (!isByLine(places)) return false;
  const key = keyOfBytes(view, from + stamps.length(), end);
  const [place, half] = [key & (seenOnce.length - 1), key >>> 16];
  const wasSeen = seenOnce[place] === half;
  seenOnce[place] = half;
  return !wasSeen;
}

function keyOf({ places, isValue }: TemplateStore, bytes: Uint8Array, cells: Cells): number {
  const { stampFirst, stampLast } = places;
  let hash = cells.count;
  for (let cell = 0; cell < cells.count; cell += 1) {
    if ((cell >= stampFirst && cell <= stampLast) || isValue[cell] === 1) continue;
    const to = cells.to[cell] ?? 0;
    for (let at = cells.from[cell] ?? 0; at < to; at += 1)
      hash = Math.imul(hash ^ (bytes[at] ?? 0), 16_777_619);
    hash = Math.imul(hash ^ 256, 16_777_619);
  }
  return hash;
}

/** A row taken apart; `null` where its values are not the cells of which something is recorded. */
function templateOf(
  { places, literals }: TemplateStore,
  recorded: readonly Recorded[],
  bytes: Uint8Array,
  from: number,
  end: number,
  cells: Cells,
): RowTemplate | null {
  const { stampFirst, stampLast, values } = places;
  const isEntry = recorded.length === 1 && recorded[0]?.kind === 'entry';
  if (!isEntry && recorded.length !== values.length) return null;
  const stampEnd = cells.to[stampLast] ?? 0;
  const gauges = recorded.flatMap((one, index) => {
    const cell = values[index] ?? 0;
    const isGauge = one.kind === 'reading' && one.parameter.gauge !== null;
    const [start, to] = [cells.from[cell] ?? 0, cells.to[cell] ?? 0];
    return isGauge ? [{ from: start, to: endOfNumber(bytes, start, to) }] : [];
  });
  // Their numbers are handed on in the order of the cells, which must be the order in which they are recorded.
  if (!gauges.every((gauge, index) => gauge.from >= (gauges[index - 1]?.to ?? stampEnd))) return null;
  const edges = [stampEnd, ...gauges.flatMap((gauge) => [gauge.from, gauge.to]), end];
  const parts = edges.flatMap((edge, index) =>
    index % 2 === 0 ? [addLiteral(literals, bytes.slice(edge, edges[index + 1]))] : [],
  );
  return {
    recorded,
    before: addLiteral(literals, bytes.slice(from, cells.from[stampFirst] ?? 0)),
    parts,
    readings: readingsIn(recorded),
    gauges: gauges.length,
    next: null,
    instead: null,
    batch: null,
    place: 0,
  };
}

function readingsIn(recorded: readonly Recorded[]): readonly RecordedReading[] {
  const hasMore = recorded.some((one) => one.kind !== 'reading' && one.kind !== 'empty');
  return hasMore ? [] : recorded.filter((one) => one.kind === 'reading');
}
