import { DamagedEnd, eachChunk, type FileSource } from '../pipeline.ts';
import { endsIn, type LineEnds, lineEndsOf, wholeCharacters } from './line-blocks.ts';

/** A line without an end is cut here, so that memory stays bounded. */
const mostHeld = 16_777_216;

/** The bytes of a text in pieces of whole lines, about a megabyte each at most; where they end too early, all that came before. */
async function* wholeLines(source: FileSource, ends: LineEnds): AsyncGenerator<Uint8Array> {
  let rest = new Uint8Array(0);
  try {
    for await (const piece of wholeCharacters(source, ends.width)) {
      const last = lastEnd(piece, ends);
      if (last === 0 && rest.length < mostHeld) {
        rest = joined(rest, piece);
        continue;
      }
      yield joined(rest, piece.subarray(0, last));
      rest = piece.slice(last);
    }
  } catch (error) {
    if (error instanceof DamagedEnd && rest.length > 0) yield rest;
    throw error;
  }
  if (rest.length > 0) yield rest;
}

function lastEnd(piece: Uint8Array, ends: LineEnds): number {
  if (ends.width === 1) return piece.lastIndexOf(0x0a) + 1;
  let last = 0;
  for (const end of endsIn(piece, ends)) last = end;
  return last;
}

function joined(one: Uint8Array, other: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(one.length + other.length);
  both.set(one);
  both.set(other, one.length);
  return both;
}

/** Hands on the text of a log, whole lines at a time. What ends too early is read to there. */
export async function eachPiece(
  source: FileSource,
  encoding: string,
  take: (text: string) => void,
): Promise<void> {
  const decoder = new TextDecoder(encoding, { ignoreBOM: true });
  const lines = { ...source, open: () => wholeLines(source, lineEndsOf(encoding)) };
  await eachChunk(lines, (piece) => {
    take(decoder.decode(piece));
    return true;
  });
}

/** A log whose text is changed and whose encoding is as it was; bytes that are no text stay as they are. */
export function changedLog(
  source: FileSource,
  encoding: string,
  change: (text: string) => string,
): FileSource {
  async function* open(): AsyncGenerator<Uint8Array> {
    for await (const piece of wholeLines(source, lineEndsOf(encoding)))
      yield changedBytes(piece, encoding, change);
  }
  return { name: source.name, bytes: null, open };
}

function changedBytes(bytes: Uint8Array, encoding: string, change: (text: string) => string): Uint8Array {
  const text = new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes);
  if (encoding === 'utf-8' && text.includes('\uFFFD')) return changedLines(bytes, change);
  const changed = change(text);
  return changed === text ? bytes : encoded(changed, encoding);
}

/** Line by line: one with bytes that are no UTF-8 is taken as Windows-1252, in which any byte is a character. */
function changedLines(bytes: Uint8Array, change: (text: string) => string): Uint8Array {
  const lines: Uint8Array[] = [];
  for (let from = 0; from < bytes.length; ) {
    const end = bytes.indexOf(0x0a, from);
    const line = bytes.subarray(from, end < 0 ? bytes.length : end + 1);
    const isForeign = new TextDecoder('utf-8', { ignoreBOM: true }).decode(line).includes('\uFFFD');
    lines.push(changedBytes(line, isForeign ? 'windows-1252' : 'utf-8', change));
    from += line.length;
  }
  return lines.reduce<Uint8Array>(joined, new Uint8Array(0));
}

const everyByte = Uint8Array.from({ length: 256 }, (_, byte) => byte);
const byteOf = new Map(
  [...new TextDecoder('windows-1252').decode(everyByte)].map((sign, byte) => [sign, byte]),
);

function encoded(text: string, encoding: string): Uint8Array {
  if (encoding === 'utf-8') return new TextEncoder().encode(text);
  if (!encoding.startsWith('utf-16')) return Uint8Array.from(text, (sign) => byteOf.get(sign) ?? 0x3f);
  const bytes = new DataView(new ArrayBuffer(text.length * 2));
  for (let at = 0; at < text.length; at += 1)
    bytes.setUint16(at * 2, text.charCodeAt(at), encoding === 'utf-16le');
  return new Uint8Array(bytes.buffer);
}
