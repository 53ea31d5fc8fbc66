import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { InputError } from '../pipeline.ts';

/** The day that every member bears: the same members give the same bytes. The format knows no earlier one. */
const day = new Date(1980, 0, 1);
/** What is packed depends on the pieces that it comes in, so they have one size. */
const pieceBytes = 65_536;
/** A zip without its later extension holds no more. Source: APPNOTE.TXT 6.3.10 (2022), section 4.4.1.4. */
const mostBytes = 0xffff_ffff;

/** Takes the members of a zip one after the other. */
export interface ZipWriter {
  /** Bytes that come in any pieces. What is mostly line ends is not packed: it would unpack to more than a log may. */
  add(name: string, bytes: AsyncIterable<Uint8Array>, isSparse?: boolean): Promise<void>;
  /** All of it. */
  end(): Uint8Array;
}

/** A new zip. Throws InputError, from `add`, if it grows larger than a zip can be. */
export function zipWriter(place: string): ZipWriter {
  const parts: Uint8Array[] = [];
  let length = 0;
  const zip = new Zip((error, bytes) => {
    if (error !== null) throw error;
    parts.push(bytes);
    length += bytes.length;
    if (length > mostBytes)
      throw new InputError(place, 'the bundle would be larger than 4 GB.', 'Name one pair, or fewer files.');
  });
  return {
    async add(name, bytes, isSparse = false) {
      const member = isSparse ? new ZipPassThrough(name) : new ZipDeflate(name, { level: 6 });
      member.mtime = day;
      zip.add(member);
      for await (const piece of pieced(bytes)) member.push(piece, false);
      member.push(new Uint8Array(0), true);
    },
    end() {
      zip.end();
      const whole = new Uint8Array(length);
      let at = 0;
      for (const part of parts) {
        whole.set(part, at);
        at += part.length;
      }
      return whole;
    },
  };
}

/** The bytes in pieces of one size, each with memory of its own. */
async function* pieced(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let piece = new Uint8Array(pieceBytes);
  let filled = 0;
  for await (const chunk of bytes)
    for (let at = 0; at < chunk.length; ) {
      const part = chunk.subarray(at, at + pieceBytes - filled);
      piece.set(part, filled);
      filled += part.length;
      at += part.length;
      if (filled < pieceBytes) continue;
      yield piece;
      piece = new Uint8Array(pieceBytes);
      filled = 0;
    }
  if (filled > 0) yield piece.subarray(0, filled);
}
