import { Gunzip } from 'fflate';
import { DamagedEnd } from '../src/pipeline.ts';
import { crc32 } from './crc32.ts';

/** So many packed bytes are kept of those that came before: the end of a member may lie in them. */
const keptBytes = 65_536;
const trailerBytes = 8;

/** The member that is being unpacked: what its trailer must say. */
interface Member {
  sum: number;
  length: number;
  /** Where its packed bytes begin, from the start of all. */
  from: number;
}

/** The packed bytes that were given last, and where they begin. */
interface Window {
  bytes: Uint8Array;
  from: number;
}

/**
 * Unpacks gzip of one member or several; zeros may fill the end. Throws DamagedEnd, after all that could be unpacked, where
 * the bytes are cut off, damaged, do not make their sum or length, or are followed by others. The unpacker checks no sums and
 * does not tell where a member ends: the trailer that a member must have is known once all of it is unpacked, and looked for.
 * Source: RFC 1952 (1996), section 2.3.
 */
export async function* gunzip(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const unpacker = gzipMembers();
  for await (const chunk of packed) yield* unpacker.push(chunk, false);
  yield* unpacker.push(new Uint8Array(0), true);
}

interface Unpacker {
  push(chunk: Uint8Array, isLast: boolean): Generator<Uint8Array>;
}

function gzipMembers(): Unpacker {
  const window: Window = { bytes: new Uint8Array(0), from: 0 };
  const member: Member = { sum: 0, length: 0, from: 0 };
  const ready: Uint8Array[] = [];
  let isWrong = false;
  let isPadded = false;
  let unpacker = start(0);
  function start(from: number): Gunzip {
    Object.assign(member, { sum: 0, length: 0, from });
    const made = new Gunzip((chunk) => {
      member.sum = crc32(chunk, member.sum);
      member.length += chunk.length;
      ready.push(chunk);
    });
    made.onmember = (offset) => {
      isWrong = isWrong || trailerAt(window, member) !== from + offset - trailerBytes;
      Object.assign(member, { sum: 0, length: 0, from: from + offset });
    };
    return made;
  }
  function* push(chunk: Uint8Array, isLast: boolean): Generator<Uint8Array> {
    slide(window, chunk);
    const failed = isPadded ? null : failureOf(unpacker, chunk, isLast);
    yield* ready.splice(0);
    if (failed === null && !isPadded && !isLast) return;
    const at = isPadded ? window.from + window.bytes.length - chunk.length : endOf(window, member);
    if (at === null) throw new DamagedEnd(failed === null ? wrongSum : 'The archive is cut off or damaged');
    const rest = withoutZeros(window.bytes.subarray(at - window.from));
    isPadded = rest.length === 0;
    if (isPadded && isLast && isWrong) throw new DamagedEnd(wrongSum);
    if (isPadded) return;
    if (rest[0] !== 0x1f || rest[1] !== 0x8b)
      throw new DamagedEnd('Other bytes follow the end of the archive');
    // Another member behind zeros.
    const from = window.from + window.bytes.length - rest.length;
    unpacker = start(from);
    const again = rest.slice();
    slide(window, new Uint8Array(0));
    const wrong = failureOf(unpacker, again, isLast);
    yield* ready.splice(0);
    if (wrong !== null) throw new DamagedEnd('The archive is cut off or damaged');
  }
  return { push };
}

const wrongSum = 'The check sum or the length of the archive is wrong';

function failureOf(unpacker: Gunzip, chunk: Uint8Array, isLast: boolean): Error | null {
  try {
    unpacker.push(chunk, isLast);
    return null;
  } catch (error) {
    if (error instanceof Error && 'code' in error) return error;
    throw error;
  }
}

function slide(window: Window, chunk: Uint8Array): void {
  const kept = window.bytes.subarray(Math.max(0, window.bytes.length - keptBytes));
  window.from += window.bytes.length - kept.length;
  const bytes = new Uint8Array(kept.length + chunk.length);
  bytes.set(kept);
  bytes.set(chunk, kept.length);
  window.bytes = bytes;
}

/** Where the trailer that the member must have begins, from the start of all; -1 where it is nowhere. */
function trailerAt({ bytes, from }: Window, member: Member): number {
  const wanted = new Uint8Array(trailerBytes);
  const view = new DataView(wanted.buffer);
  view.setUint32(0, member.sum, true);
  view.setUint32(4, member.length % 2 ** 32, true);
  const [first = 0] = wanted;
  for (
    let at = bytes.indexOf(first, Math.max(0, member.from - from));
    at >= 0 && at + trailerBytes <= bytes.length;
    at = bytes.indexOf(first, at + 1)
  )
    if (wanted.every((byte, index) => bytes[at + index] === byte)) return from + at;
  return -1;
}

function endOf(window: Window, member: Member): number | null {
  const at = trailerAt(window, member);
  return at < 0 ? null : at + trailerBytes;
}

function withoutZeros(bytes: Uint8Array): Uint8Array {
  const first = bytes.findIndex((byte) => byte !== 0);
  return first < 0 ? bytes.subarray(bytes.length) : bytes.subarray(first);
}
