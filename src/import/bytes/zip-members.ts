import {
  configure,
  ERR_ENCRYPTED,
  ERR_ENTRY_DATA_OUT_OF_BOUNDS,
  ERR_INVALID_COMPRESSED_DATA,
  ERR_INVALID_CRC32,
  ERR_INVALID_UNCOMPRESSED_SIZE,
  ERR_LOCAL_FILE_HEADER_NOT_FOUND,
  ERR_OVERLAPPING_ENTRY,
  ERR_UNSUPPORTED_COMPRESSION,
  ERR_UNSUPPORTED_ENCRYPTION,
  type FileEntry,
  Reader,
  ZipReader,
} from '@zip.js/zip.js/lib/zip-core-native.js';
import { compareText } from '../../vocabulary.ts';
import { DamagedEnd } from './damaged-end.ts';
import { exceedsExpansionLimit, expandsTooFar } from './expansion-limit.ts';
import type { FileSource, StoredFile } from './file-source.ts';
import { InputError } from './input-error.ts';

const mostMembers = 10_000;

/** A member of a zip: its path as it stands there, and its unpacked size. */
export interface ZipMember extends FileSource {
  readonly path: string;
  readonly bytes: number;
}

/** The members of a zip, and those that cannot be taken. */
export interface ZipMembers {
  readonly members: readonly ZipMember[];
  readonly failures: readonly InputError[];
}

/**
 * The members of a zip in the order of their names, `archive.zip/folder/member`. Throws InputError if it has no directory that
 * can be read, or more members than a person would pack.
 */
export async function zipMembers(
  file: StoredFile,
  container: NonNullable<FileSource['container']>,
): Promise<ZipMembers> {
  configure({ useWebWorkers: false });
  const members: ZipMember[] = [];
  const failures: InputError[] = [];
  const seen = new Map<string, number>();
  for (const entry of await entriesOf(file)) {
    const path = toldApart(entry.filename, seen);
    const name = `${file.name}/${path}`;
    if (climbs(entry.filename))
      failures.push(
        new InputError(
          name,
          'the path of this member leads out of the archive.',
          'Pack it again under a plain name.',
        ),
      );
    else if (exceedsExpansionLimit(entry.uncompressedSize, entry.compressedSize))
      failures.push(expandsTooFar(name));
    else
      members.push({
        name,
        path,
        bytes: entry.uncompressedSize,
        container,
        open: () => unpacked(name, entry),
      });
  }
  return { members: members.sort((a, b) => compareText(a.name, b.name)), failures };
}

async function entriesOf(file: StoredFile): Promise<readonly FileEntry[]> {
  const reader = new ZipReader(
    Object.assign(new Reader(file), {
      size: file.bytes,
      readUint8Array: (from: number, length: number) => file.slice(from, from + length),
    }),
    // What a name or a size may not be is decided here, member by member, so that the rest can be read.
    { strictness: 'tolerant', filenameValidation: 'tolerant' },
  );
  const entries: FileEntry[] = [];
  try {
    for await (const entry of reader.getEntriesGenerator()) {
      if (!entry.directory) entries.push(entry);
      if (entries.length > mostMembers)
        throw new InputError(file.name, `it contains more than ${mostMembers} members.`, 'Unpack it first.');
    }
  } catch (error) {
    if (error instanceof InputError || !(error instanceof Error)) throw error;
    throw new InputError(
      file.name,
      `the archive is damaged or incomplete: ${error.message.toLowerCase()}.`,
      'Copy or pack it again.',
    );
  }
  return entries;
}

/** The name of a member; a second one of the same name is numbered before its ending: `a (2).csv`. */
function toldApart(path: string, seen: Map<string, number>): string {
  const count = (seen.get(path) ?? 0) + 1;
  seen.set(path, count);
  return count === 1 ? path : path.replace(/(?=(?:\.[A-Za-z0-9]{1,8}){0,2}$)/, ` (${count})`);
}

/** A path with `..` in it, or from the root: no place within the archive. */
function climbs(path: string): boolean {
  return /(^|[/\\])\.\.([/\\]|$)|^[/\\]|^[A-Za-z]:/.test(path);
}

/** Whoever stops early is not told what comes later. */
async function* unpacked(name: string, entry: FileEntry): AsyncGenerator<Uint8Array> {
  const { readable, writable } = new TransformStream<Uint8Array, Uint8Array>();
  const options = { checkSignature: true, checkOverlappingEntry: true };
  const done = entry.getData(writable, options).then(
    () => null,
    (error: unknown) => error,
  );
  // A member that fails before its first byte leaves the stream open: the failure has to be waited for too.
  const failed = done.then((wrong) => (wrong === null ? new Promise<never>(() => undefined) : { wrong }));
  const reader = readable.getReader();
  try {
    for (;;) {
      const read = await Promise.race([reader.read(), failed]);
      if ('wrong' in read) throw read.wrong;
      if (read.done) break;
      yield read.value;
    }
  } catch (error) {
    throw meaningOf(name, error);
  } finally {
    // Whoever stops early must let go of the member, or the next never begins.
    await reader.cancel().catch(() => undefined);
  }
  const wrong = await done;
  if (wrong !== null) throw meaningOf(name, wrong);
}

/** What went wrong with a member, for the user; anything else is a defect. */
function meaningOf(name: string, error: unknown): unknown {
  if (!(error instanceof Error)) return error;
  switch (error.message) {
    case ERR_INVALID_COMPRESSED_DATA:
    case ERR_INVALID_CRC32:
      return new DamagedEnd('The archive is damaged');
    case ERR_INVALID_UNCOMPRESSED_SIZE:
      return new InputError(
        name,
        'its unpacked size differs from the size in the archive.',
        'Pack it again.',
      );
    case ERR_ENCRYPTED:
    case ERR_UNSUPPORTED_ENCRYPTION:
      return new InputError(name, 'it is protected by a password.', 'Unpack it first.');
    case ERR_UNSUPPORTED_COMPRESSION:
      return new InputError(name, 'its compression method is not supported.', 'Unpack it first.');
    case ERR_OVERLAPPING_ENTRY:
    case ERR_LOCAL_FILE_HEADER_NOT_FOUND:
    case ERR_ENTRY_DATA_OUT_OF_BOUNDS:
      return new InputError(name, 'the archive is damaged at this member.', 'Copy or pack it again.');
    default:
      return error;
  }
}
