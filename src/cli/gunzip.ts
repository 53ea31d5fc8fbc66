import { crc32, createInflateRaw, type InflateRaw } from 'node:zlib';
import { DamagedEnd } from '../pipeline.ts';

// Node's own gunzip drops what it unpacked last where the sum is wrong or other bytes follow: so the frame is read here.

/** About so much is unpacked while what was unpacked before is worked on. */
const aheadBytes = 1_048_576;
/** The unpacker's own memory: whenever it is full, unpacking waits for the thread that is at work on the bytes before. */
const unpackedBytes = 2 * aheadBytes;
/** Few packed bytes may unpack to a thousand times their size. */
const leastPacked = 4096;
const copiesHeld = 3;

/** Packed bytes that were not yet used. */
interface Input {
  rest: Uint8Array;
  /** Adds more; false where there are none. */
  more(): Promise<boolean>;
}

/**
 * Unpacks gzip of one member or several; zeros may fill the end. Throws DamagedEnd, after all that could be unpacked, where
 * the bytes are cut off, damaged, do not make their sum, or are followed by others. Source: RFC 1952 (1996), section 2.3.
 */
export async function* gunzip(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const chunks = packed[Symbol.asyncIterator]();
  const input = inputOf(chunks);
  const share = sharedCopies();
  try {
    let isRight = true;
    // Members behind one with a wrong sum are as good as before.
    do isRight = (yield* member(input, share)) && isRight;
    while (await goesOn(input));
    if (!isRight) throw new DamagedEnd('The checksum or length of the archive is wrong');
  } finally {
    await chunks.return?.();
  }
}

/**
 * Copies into memory that is shared, so that a thread can hash them where they are, and used again: one holds until two more
 * were made.
 */
function sharedCopies(): (chunk: Uint8Array) => Uint8Array {
  const memory: SharedArrayBuffer[] = [];
  return (chunk) => {
    const piece =
      (memory.length < copiesHeld ? undefined : memory.shift()) ?? new SharedArrayBuffer(unpackedBytes);
    memory.push(piece);
    const copy = new Uint8Array(piece, 0, chunk.length);
    copy.set(chunk);
    return copy;
  };
}

/** Gives whether its sum and length are right. */
async function* member(
  input: Input,
  share: (chunk: Uint8Array) => Uint8Array,
): AsyncGenerator<Uint8Array, boolean> {
  await skipHeader(input);
  let sum = 0;
  let length = 0;
  for await (const chunk of inflated(input)) {
    sum = crc32(chunk, sum);
    length += chunk.length;
    yield share(chunk);
  }
  if (!(await holds(input, 8))) throw new DamagedEnd('The archive is cut off or damaged');
  const trailer = new DataView(input.rest.buffer, input.rest.byteOffset, 8);
  const isRight = trailer.getUint32(0, true) === sum && trailer.getUint32(4, true) === length % 2 ** 32;
  input.rest = input.rest.subarray(8);
  return isRight;
}

function inputOf(chunks: AsyncIterator<Uint8Array>): Input {
  const input: Input = {
    rest: new Uint8Array(0),
    async more() {
      const next = await chunks.next();
      if (next.done === true) return false;
      input.rest = input.rest.length === 0 ? next.value : Buffer.concat([input.rest, next.value]);
      return true;
    },
  };
  return input;
}

async function holds(input: Input, bytes: number): Promise<boolean> {
  while (input.rest.length < bytes) if (!(await input.more())) return false;
  return true;
}

/** Whether another member follows. */
async function goesOn(input: Input): Promise<boolean> {
  do {
    let zeros = 0;
    while (input.rest[zeros] === 0) zeros += 1;
    input.rest = input.rest.subarray(zeros);
  } while (input.rest.length === 0 && (await input.more()));
  if (input.rest.length === 0) return false;
  await holds(input, 2);
  if (input.rest[0] === 0x1f && input.rest[1] === 0x8b) return true;
  throw new DamagedEnd('Other bytes follow the end of the archive');
}

/** The flags of the header, by which parts of it follow. */
const flags = { checkSum: 2, extra: 4, name: 8, comment: 16 };

async function skipHeader(input: Input): Promise<void> {
  const skip = async (bytes: number): Promise<void> => {
    if (!(await holds(input, bytes))) throw new DamagedEnd('The archive is cut off or damaged');
    input.rest = input.rest.subarray(bytes);
  };
  await holds(input, 12);
  const [first, second, method, flag = 0] = input.rest;
  if (first !== 0x1f || second !== 0x8b || method !== 8) throw new DamagedEnd('The archive is damaged');
  await skip(10);
  if ((flag & flags.extra) > 0) {
    await holds(input, 2);
    const [low = 0, high = 0] = input.rest;
    await skip(2 + low + high * 256);
  }
  for (const text of [flags.name, flags.comment]) {
    if ((flag & text) === 0) continue;
    while (!input.rest.includes(0) && (await input.more()));
    await skip(input.rest.indexOf(0) + 1);
  }
  if ((flag & flags.checkSum) > 0) await skip(2);
}

/** Unpacks to the end of the packed data, and leaves what follows it. */
async function* inflated(input: Input): AsyncGenerator<Uint8Array> {
  const unpacker = createInflateRaw({ chunkSize: unpackedBytes });
  const ready: Uint8Array[] = [];
  let length = 0;
  // Read as events: a stream that fails drops what was not yet fetched from it.
  unpacker.on('data', (chunk: Uint8Array) => {
    length += chunk.length;
    ready.push(chunk);
  });
  let error: Error | null = null;
  unpacker.on('error', (found) => {
    error = found;
  });
  try {
    for (let isEnd = false; !isEnd; ) {
      if (!(await holds(input, 1))) {
        yield* ready.splice(0);
        throw new DamagedEnd('The archive is cut off or damaged');
      }
      const before = unpacker.bytesWritten;
      const part = input.rest.subarray(0, packedFor(aheadBytes, before, length));
      const unpacked = written(unpacker, part);
      // What the part before gave is worked on while this one is unpacked.
      yield* ready.splice(0);
      await unpacked;
      const taken = unpacker.bytesWritten - before;
      input.rest = input.rest.subarray(taken);
      isEnd = taken < part.length;
      if (error === null) continue;
      yield* ready.splice(0);
      throw new DamagedEnd('The archive is damaged');
    }
  } finally {
    unpacker.destroy();
  }
  yield* ready.splice(0);
}

/** How many packed bytes unpack to about so many, as those before did. */
function packedFor(wanted: number, packed: number, unpacked: number): number {
  return unpacked === 0 ? leastPacked : Math.max(leastPacked, Math.round((wanted * packed) / unpacked));
}

/** Settles once the chunk is unpacked, or cannot be: a stream that fails never calls back. */
function written(unpacker: InflateRaw, chunk: Uint8Array): Promise<void> {
  return new Promise((resolve) => {
    const settle = (): void => {
      unpacker.off('error', settle);
      resolve();
    };
    unpacker.once('error', settle);
    unpacker.write(chunk, settle);
  });
}
