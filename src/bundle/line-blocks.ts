import type { FileSource } from '../pipeline.ts';

/** Consecutive lines of a log; `head` are the first of them, as bytes. */
export interface LineBlock {
  readonly first: number;
  readonly last: number;
  readonly head: Uint8Array;
}

const blockBytes = 1_048_576;
const headBytes = 32_768;

/** How wide a character is, and at which of its bytes the line feed stands. */
export interface LineEnds {
  readonly width: 1 | 2;
  readonly place: 0 | 1;
}

/** Where lines end in an encoding, by its WHATWG label. */
export function lineEndsOf(encoding: string): LineEnds {
  if (encoding === 'utf-16le') return { width: 2, place: 0 };
  return encoding === 'utf-16be' ? { width: 2, place: 1 } : { width: 1, place: 0 };
}

/**
 * The places behind each line end of a piece that begins at byte `offset` of its file: line feeds, in UTF-16 those of two bytes. In
 * UTF-16 pieces must begin at a whole character.
 */
export function* endsIn(piece: Uint8Array, { width, place }: LineEnds): Generator<number> {
  for (let at = piece.indexOf(0x0a); at >= 0; at = piece.indexOf(0x0a, at + 1)) {
    if (width === 1) yield at + 1;
    else if (at % 2 === place && piece[place === 0 ? at + 1 : at - 1] === 0)
      yield place === 0 ? at + 2 : at + 1;
  }
}

/** The bytes of a log in pieces of whole characters. */
export async function* wholeCharacters(source: FileSource, width: 1 | 2): AsyncGenerator<Uint8Array> {
  let rest = new Uint8Array(0);
  for await (const chunk of source.open()) {
    if (width === 1) {
      yield chunk;
      continue;
    }
    const joined = new Uint8Array(rest.length + chunk.length);
    joined.set(rest);
    joined.set(chunk, rest.length);
    const even = joined.length - (joined.length % 2);
    rest = joined.slice(even);
    yield joined.subarray(0, even);
  }
  if (rest.length > 0) yield rest;
}

/** A log as blocks of about a megabyte of whole lines each. */
export async function* lineBlocks(source: FileSource, ends: LineEnds): AsyncGenerator<LineBlock> {
  let line = 1;
  let first = 1;
  let length = 0;
  let head = growing();
  for await (const piece of wholeCharacters(source, ends.width)) {
    let from = 0;
    for (const end of endsIn(piece, ends)) {
      line += 1;
      if (length + end - from < blockBytes) continue;
      head.add(piece.subarray(from, end));
      yield { first, last: line - 1, head: head.bytes() };
      first = line;
      length = 0;
      head = growing();
      from = end;
    }
    head.add(piece.subarray(from));
    length += piece.length - from;
  }
  if (length > 0) yield { first, last: line, head: head.bytes() };
}

/** The first bytes of a block. */
function growing(): { add(bytes: Uint8Array): void; bytes(): Uint8Array } {
  const held = new Uint8Array(headBytes);
  let length = 0;
  return {
    add(bytes) {
      const part = bytes.subarray(0, headBytes - length);
      held.set(part, length);
      length += part.length;
    },
    bytes: () => held.slice(0, length),
  };
}
