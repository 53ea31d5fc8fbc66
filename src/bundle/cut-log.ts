import { type FileSource, type Imported, importFiles } from '../pipeline.ts';
import type { Interval } from '../vocabulary.ts';
import { endsIn, type LineBlock, type LineEnds, lineBlocks, wholeCharacters } from './line-blocks.ts';

/** Lines from and to, both inside. */
export type LineRange = readonly [number, number];

type ReadOptions = Parameters<typeof importFiles>[1];

/** What of a long log is of use. */
export interface Wanted {
  /** Milliseconds UTC. */
  readonly spans: readonly Interval[];
  /** Lines that are cited. */
  readonly lines: readonly number[];
}

/**
 * Which lines of a log are of the wanted time: its first ones always, which say what it is, then block by block, each dated by
 * reading its first lines behind those of the file. Never less than what is wanted; `null`: all of it, where the blocks cannot
 * be dated or are not in the order of time.
 */
export async function linesOfTime(
  source: FileSource,
  { spans, lines }: Wanted,
  ends: LineEnds,
  options: ReadOptions,
): Promise<readonly LineRange[] | null> {
  const blocks: { readonly first: number; readonly last: number; readonly time: number }[] = [];
  let head: Uint8Array | null = null;
  for await (const block of lineBlocks(source, ends)) {
    head ??= wholeLines(block.head, ends);
    const time = await timeOf(source, head, block, ends, options);
    const before = blocks.at(-1)?.time ?? Number.NEGATIVE_INFINITY;
    if (time === null || time < before) return null;
    blocks.push({ first: block.first, last: block.last, time });
  }
  const kept = blocks.filter(({ first, last }, index) => {
    // The lines before the one that dates a block are older than it.
    const from = blocks[index - 1]?.time ?? Number.NEGATIVE_INFINITY;
    const to = blocks[index + 1]?.time ?? Number.POSITIVE_INFINITY;
    return (
      index === 0 ||
      spans.some((span) => span.from <= to && span.to >= from) ||
      lines.some((line) => line >= first && line <= last)
    );
  });
  return joined(kept.map(({ first, last }) => [first, last]));
}

/** The newest time that the first lines of a block tell; `null` where they tell none. */
async function timeOf(
  source: FileSource,
  head: Uint8Array,
  block: LineBlock,
  ends: LineEnds,
  options: ReadOptions,
): Promise<number | null> {
  const sample = wholeLines(block.head, ends);
  const bytes = new Uint8Array(head.length + (block.first === 1 ? 0 : sample.length));
  bytes.set(head);
  if (block.first > 1) bytes.set(sample, head.length);
  const { files }: Imported = await importFiles([inMemory(source.name, bytes)], options);
  return files[0]?.input.to ?? null;
}

function wholeLines(bytes: Uint8Array, ends: LineEnds): Uint8Array {
  return bytes.subarray(0, [...endsIn(bytes, ends)].at(-1) ?? bytes.length);
}

function inMemory(name: string, bytes: Uint8Array): FileSource {
  return {
    name,
    bytes: bytes.length,
    async *open() {
      yield bytes;
    },
  };
}

/** Ranges that follow each other as one. */
function joined(ranges: readonly LineRange[]): readonly LineRange[] {
  const result: [number, number][] = [];
  for (const [from, to] of ranges) {
    const last = result.at(-1);
    if (last !== undefined && last[1] + 1 >= from) last[1] = to;
    else result.push([from, to]);
  }
  return result;
}

/** The log with its other lines empty: every line keeps its number and its end. */
export function cutLog(source: FileSource, ranges: readonly LineRange[], ends: LineEnds): FileSource {
  const { name } = source;
  return { name, bytes: null, open: () => keptLines(source, ranges, ends) };
}

async function* keptLines(
  source: FileSource,
  ranges: readonly LineRange[],
  ends: LineEnds,
): AsyncGenerator<Uint8Array> {
  let line = 1;
  let place = 0;
  const isKept = (): boolean => {
    while ((ranges[place]?.[1] ?? Number.POSITIVE_INFINITY) < line) place += 1;
    return line >= (ranges[place]?.[0] ?? Number.POSITIVE_INFINITY);
  };
  // A carriage return may be the last character of the piece before.
  let wasReturn = false;
  for await (const piece of wholeCharacters(source, ends.width)) {
    const out = new Uint8Array(piece.length + ends.width);
    let length = 0;
    const put = (bytes: Uint8Array): void => {
      out.set(bytes, length);
      length += bytes.length;
    };
    const sign = (code: number): void => {
      out[length + ends.place] = code;
      length += ends.width;
    };
    let from = 0;
    for (const end of endsIn(piece, ends)) {
      const feed = end - ends.width;
      if (isKept()) put(piece.subarray(from, end));
      else {
        // Of millions of lines none is worth an object.
        if (feed > from ? isReturn(piece, feed - ends.width, ends) : wasReturn) sign(0x0d);
        sign(0x0a);
      }
      line += 1;
      from = end;
      wasReturn = false;
    }
    if (isKept()) put(piece.subarray(from));
    else if (from < piece.length) wasReturn = isReturn(piece, piece.length - ends.width, ends);
    yield out.subarray(0, length);
  }
}

function isReturn(piece: Uint8Array, at: number, { width, place }: LineEnds): boolean {
  return piece[at + place] === 0x0d && (width === 1 || piece[at + 1 - place] === 0);
}
