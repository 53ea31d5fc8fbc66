import type { Said, SaidReading, SaidRun } from '../changes/said.ts';
import type { ByteStamps } from './byte-stamps.ts';
import type { Cells } from './cells.ts';
import { addLiteral, holds, type Literal, type Literals, noLiterals, type Piece } from './literal.ts';

/** A row that was read before: its bytes without the stamp and without the numbers of gauges, and what it said. */
export interface KnownRow {
  readonly said: readonly Said[];
  /** Before the stamp; then from the stamp to the first gauge, between gauges, and to the line end with it. */
  readonly before: Literal;
  readonly parts: readonly Literal[];
  /** What it says, where that is readings that are no gauges': then its bytes under another stamp say all there is. */
  readonly readings: readonly SaidReading[];
  /** The row that came after it last. */
  next: KnownRow | null;
  /** The run that it was put in last, and where: another may have taken its place since. */
  run: KnownRun | null;
  place: number;
}

/** Known rows that came one after the other under one stamp: their bytes, with the stamp they are expected under next. */
export interface KnownRun extends SaidRun {
  readonly rows: KnownRow[];
  /** With some to spare. */
  bytes: Uint8Array;
  view: DataView;
  /** Where each row begins, and where the last ends. */
  readonly edges: Int32Array;
  /** Where the stamp of each row stands. */
  readonly stamps: Int32Array;
  readonly stampLength: number;
}

/** Where the stamp and the polled values stand; the stamp may be a date and a clock side by side. */
export interface Places {
  readonly stampFirst: number;
  readonly stampLast: number;
  readonly values: readonly number[];
}

/** The rows that are known, by what they say besides stamp and values: their unit and parameter, in most files. */
export interface KnownRows {
  readonly places: Places;
  readonly stamps: ByteStamps;
  readonly literals: Literals;
  /** The byte of a decimal comma; -1 where a comma parts cells. */
  readonly comma: number;
  readonly buckets: Map<number, KnownRow[]>;
  /** Rows that begin with their stamp and hold no values, by all the bytes behind it. */
  readonly whole: Map<number, KnownRow>;
  /** Of such rows that came once, half of the key in the place that the other half names. */
  readonly marks: Uint16Array;
  count: number;
  /** Of the row that was last found again: where it ends, and the numbers of its gauges. */
  end: number;
  readonly numbers: Float64Array;
}

const mostRows = 50_000;
const mostAlike = 64;
const mostGauges = 64;
const mostMarks = 65_536;
const [zero, nine, minus, point, comma, lineFeed] = [48, 57, 45, 46, 44, 10];

/** None yet. */
export function knownRows(places: Places, stamps: ByteStamps, delimiter: number): KnownRows {
  const numbers = new Float64Array(mostGauges);
  return {
    places,
    stamps,
    literals: noLiterals(),
    comma: delimiter === comma ? -1 : comma,
    buckets: new Map(),
    whole: new Map(),
    marks: new Uint16Array(isWhole(places) ? mostMarks : 0),
    count: 0,
    end: 0,
    numbers,
  };
}

/** True if the bytes from `from` on are that row at another instant; then `end` and `numbers` are those of this one. */
export function isAgain(known: KnownRows, row: KnownRow, piece: Piece, from: number): boolean {
  const { before, parts } = row;
  const { words } = known.literals;
  const { view } = piece;
  if (!holds(view, from, words, before)) return false;
  const stampAt = from + before.length;
  let at = stampAt + known.stamps.length();
  for (let part = 0; part < parts.length; part += 1) {
    if (part > 0) {
      const numberEnd = readNumber(known, piece.bytes, at, part - 1);
      if (numberEnd === at) return false;
      at = numberEnd;
    }
    const text = parts[part] ?? before;
    if (!holds(view, at, words, text)) return false;
    at += text.length;
  }
  known.end = at;
  return known.stamps.fits(piece, stampAt);
}

/** Reads a number as a gauge prints it into its place; gives where it ends, or `from` if there is none. */
function readNumber({ comma, numbers }: KnownRows, bytes: Uint8Array, from: number, into: number): number {
  let at = bytes[from] === minus ? from + 1 : from;
  const first = at;
  let digits = 0;
  let decimals = -1;
  for (let byte = bytes[at] ?? 0; ; byte = bytes[at] ?? 0) {
    if (byte >= zero && byte <= nine) {
      digits = digits * 10 + byte - zero;
      if (decimals >= 0) decimals += 1;
    } else if ((byte === point || byte === comma) && decimals < 0 && at > first) decimals = 0;
    else break;
    at += 1;
  }
  // Up to fifteen digits and a power of ten are exact: their quotient is the number nearest to the text.
  if (at === first || decimals === 0 || at - first > 15) return from;
  const size = decimals > 0 ? digits / 10 ** decimals : digits;
  numbers[into] = first === from ? size : -size;
  return at;
}

/** The known row that the bytes from `from` on are again; `null` if none is. */
export function findRow(known: KnownRows, piece: Piece, from: number, cells: Cells): KnownRow | null {
  return isWhole(known.places) ? findWhole(known, piece, from) : findAmong(known, piece, from, cells);
}

/** The same for rows of which `findWhole` knows none. */
export function findAmong(known: KnownRows, piece: Piece, from: number, cells: Cells): KnownRow | null {
  if (known.stamps.length() === 0 || isWhole(known.places)) return null;
  const alike = known.buckets.get(keyOf(known.places, piece.bytes, cells)) ?? [];
  return alike.find((row) => isAgain(known, row, piece, from)) ?? null;
}

/** The same for rows that begin with their stamp and hold no values: their cells need not be found. */
export function findWhole(known: KnownRows, piece: Piece, from: number): KnownRow | null {
  const length = known.stamps.length();
  if (length === 0 || !isWhole(known.places)) return null;
  const end = piece.bytes.indexOf(lineFeed, from + length) + 1;
  const row = end > 0 ? known.whole.get(keyOfBytes(piece.view, from + length, end)) : undefined;
  return row !== undefined && isAgain(known, row, piece, from) ? row : null;
}

function isWhole({ stampFirst, stampLast, values }: Places): boolean {
  return values.length === 0 && stampFirst === 0 && stampLast < Number.MAX_SAFE_INTEGER;
}

function keyOfBytes(view: DataView, from: number, to: number): number {
  let hash = to - from;
  let at = from;
  for (; at + 4 <= to; at += 4) hash = Math.imul(hash ^ view.getInt32(at, true), 16_777_619) ^ (hash >>> 15);
  for (; at < to; at += 1) hash = Math.imul(hash ^ view.getUint8(at), 16_777_619);
  return hash;
}

/** Remembers a row that ends at `end`, and what it said; `null` if it is none that can be told apart, or one too many. */
export function learnRow(
  known: KnownRows,
  said: readonly Said[],
  { bytes, view }: Piece,
  from: number,
  end: number,
  cells: Cells,
): KnownRow | null {
  if (known.count >= mostRows || isFirst(known, view, from, end)) return null;
  const made = rowOf(known, said, bytes, from, end, cells);
  if (made === null || made.parts.length > mostGauges) return null;
  if (isWhole(known.places)) known.whole.set(keyOfBytes(view, from + known.stamps.length(), end), made);
  else {
    const key = keyOf(known.places, bytes, cells);
    const alike = known.buckets.get(key) ?? [];
    if (alike.length >= mostAlike) return null;
    if (alike.push(made) === 1) known.buckets.set(key, alike);
  }
  known.count += 1;
  return made;
}

/**
 * True for a row that is known by all its bytes and comes for the first time, as far as the marks tell: many messages hold a
 * number of their own and never come again.
 */
function isFirst({ places, stamps, marks }: KnownRows, view: DataView, from: number, end: number): boolean {
  if (!isWhole(places)) return false;
  const key = keyOfBytes(view, from + stamps.length(), end);
  const [place, mark] = [key & (marks.length - 1), key >>> 16];
  const isMarked = marks[place] === mark;
  marks[place] = mark;
  return !isMarked;
}

function keyOf({ values, stampFirst, stampLast }: Places, bytes: Uint8Array, cells: Cells): number {
  let hash = cells.count;
  for (let cell = 0; cell < cells.count; cell += 1) {
    if ((cell >= stampFirst && cell <= stampLast) || values.includes(cell)) continue;
    const to = cells.to[cell] ?? 0;
    for (let at = cells.from[cell] ?? 0; at < to; at += 1)
      hash = Math.imul(hash ^ (bytes[at] ?? 0), 16_777_619);
    hash = Math.imul(hash ^ 256, 16_777_619);
  }
  return hash;
}

/** A row taken apart; `null` where its values are not the cells that were said. */
function rowOf(
  { places, literals }: KnownRows,
  said: readonly Said[],
  bytes: Uint8Array,
  from: number,
  end: number,
  cells: Cells,
): KnownRow | null {
  const { stampFirst, stampLast, values } = places;
  const isEntry = said.length === 1 && said[0]?.kind === 'entry';
  if (!isEntry && said.length !== values.length) return null;
  const stampEnd = cells.to[stampLast] ?? 0;
  const gauges = said.flatMap((one, index) => {
    const cell = values[index] ?? 0;
    const isGauge = one.kind === 'reading' && one.parameter.gauge !== null;
    return isGauge ? [{ from: cells.from[cell] ?? 0, to: cells.to[cell] ?? 0 }] : [];
  });
  // Their numbers are handed on in the order of the cells: both must be one.
  if (!gauges.every((gauge, index) => gauge.from >= (gauges[index - 1]?.to ?? stampEnd))) return null;
  const edges = [stampEnd, ...gauges.flatMap((gauge) => [gauge.from, gauge.to]), end];
  const parts = edges.flatMap((edge, index) =>
    index % 2 === 0 ? [addLiteral(literals, bytes.slice(edge, edges[index + 1]))] : [],
  );
  return {
    said,
    before: addLiteral(literals, bytes.slice(from, cells.from[stampFirst] ?? 0)),
    parts,
    readings: gauges.length === 0 ? readingsIn(said) : [],
    next: null,
    run: null,
    place: 0,
  };
}

function readingsIn(said: readonly Said[]): readonly SaidReading[] {
  const hasMore = said.some((one) => one.kind !== 'reading' && one.kind !== 'silent');
  return hasMore ? [] : said.filter((one) => one.kind === 'reading');
}
