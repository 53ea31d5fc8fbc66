import { type FileHandle, open, readFile, stat } from 'node:fs/promises';
import { InputError, mostYaml, type StoredFile, tooLargeYaml } from '../pipeline.ts';
import { refuse } from './system-refusal.ts';
import { thingAt } from './things.ts';

/** What is fastest to read and to scan. */
const pieceBytes = 1_048_576;
const leastPiece = 4096;
const chunks = 3;

async function* openPipe(name: string): AsyncGenerator<Uint8Array> {
  const file = await open(name).catch((error: unknown) => refuse(name, error));
  try {
    yield* piecesOf(name, file, null, pieceBytes);
  } finally {
    await file.close();
  }
}

/**
 * The bytes of an open file, from a place on (`null`: from where it is, as a pipe must) to its end; `size` is how many are expected. It reads
 * ahead into one of three chunks of shared memory while the two before are worked on. Throws InputError where the system refuses it.
 */
export async function* piecesOf(
  name: string,
  file: FileHandle,
  from: number | null,
  size: number,
): AsyncGenerator<Uint8Array> {
  let at = from;
  const read = async (into: Uint8Array): Promise<Uint8Array> => {
    const { bytesRead } = await file.read(into, 0, into.length, at);
    if (at !== null) at += bytesRead;
    return into.subarray(0, bytesRead);
  };
  const begin = (into: Uint8Array): Promise<Uint8Array> => {
    const done = read(into);
    // What goes wrong while the chunk before is worked on is told when this one is asked for.
    done.catch(() => undefined);
    return done;
  };
  // A small file needs little memory, and of thousands of them each has its own; one that grew meanwhile has more pieces.
  const length = Math.min(pieceBytes, Math.max(size + 1, leastPiece));
  const memory: SharedArrayBuffer[] = [];
  const next = (): Uint8Array => {
    const first = memory.length < chunks ? new SharedArrayBuffer(length) : memory.shift();
    const piece = first ?? new SharedArrayBuffer(length);
    memory.push(piece);
    return new Uint8Array(piece);
  };
  let reading = begin(next());
  try {
    for (let chunk = await reading; chunk.length > 0; chunk = await reading) {
      reading = begin(next());
      yield chunk;
    }
  } catch (error) {
    refuse(name, error);
  } finally {
    await Promise.allSettled([reading]);
  }
}

/** More than this is no place for a pipe, since it is kept. Chosen here. */
const mostPiped = 1_073_741_824;

/** What a pipe gives, to its end, kept so that it can be read again. Throws InputError if that is more than a gigabyte. */
export async function pipedFile(path: string): Promise<{ readonly content: StoredFile }> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of openPipe(path)) {
    pieces.push(chunk.slice());
    length += chunk.length;
    if (length > mostPiped)
      throw new InputError(
        path,
        'the pipe delivers more than a gigabyte.',
        'Save its output to a file and name that file.',
      );
  }
  const bytes = Buffer.concat(pieces);
  pieces.length = 0;
  const content: StoredFile = {
    name: path,
    bytes: bytes.length,
    async *open() {
      for (let at = 0; at < bytes.length; at += pieceBytes) yield bytes.subarray(at, at + pieceBytes);
    },
    slice: (from, to) => Promise.resolve(bytes.subarray(from, to)),
  };
  return { content };
}

/** Reads a small text file, such as a phrasebook. Throws InputError if it cannot, and for a pipe, which might never end. */
export async function readText(path: string): Promise<string> {
  const found = await stat(path).catch((error: unknown) => refuse(path, error));
  // What the shell itself put in place of a file has a writer.
  const thing = thingAt(found);
  if (thing === 'pipe' && !path.startsWith('/dev/'))
    throw new InputError(path, 'it is a named pipe.', 'Save its output to a file and name that file.');
  if (thing === 'device' || thing === 'socket')
    throw new InputError(path, `it is a ${thing}, not a file.`, 'Name a file.');
  if (found.size > mostYaml) throw tooLargeYaml(path);
  return readFile(path, 'utf8').catch((error: unknown) => refuse(path, error));
}
