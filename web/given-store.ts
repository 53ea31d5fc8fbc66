import {
  type FileSource,
  followedReadings,
  InputError,
  type KeptReadings,
  type Phrasebook,
  readPhrasebook,
  unpackFiles,
} from '../src/pipeline.ts';
import { bytesOf, type FileNow, platform, sourceOf } from './browser-files.ts';
import { type GrowingBrowserFile, growingFile } from './growing-file.ts';
import type { LineIndex } from './line-index.ts';
import type { GivenFile, NamedText } from './protocol.ts';
import { type Digest, isSession, readSession, type SavedSession, sessionBytes } from './session-file.ts';
import { newIndex } from './site-lines.ts';

/** A file that was given, opened: it stays so for the readings to come. */
export interface OpenedFile {
  readonly given: GivenFile;
  readonly index: LineIndex;
  /** The file itself, or the members of an archive; and what of it cannot be unpacked. */
  readonly unpacked: Awaited<ReturnType<typeof unpackFiles>>;
  readonly session: SavedSession | null;
  /** The file itself, where it is followed. */
  readonly growing: GrowingBrowserFile | null;
}

/** The files of the readings so far, by their numbers. */
export interface GivenStore {
  readonly kept: KeptReadings;
  readonly opened: Map<number, OpenedFile>;
  /** SHA-256 of what no reading hashed. */
  readonly hashes: Map<number, string>;
  /** Told of every piece that is read of a file. */
  onBytes: (file: number, bytes: number) => void;
  /** The phrasebook read last: the same text is the same object, since a file that grows is read on only by that. */
  phrasebook: { readonly of: string; readonly read: Phrasebook } | null;
  /** The file of a number as it is at this moment; `null` where there is no other than was given. */
  readonly fileNow: (file: number) => Promise<File | null>;
}

/** Nothing was given yet. */
export function givenStore(fileNow: GivenStore['fileNow'] = () => Promise.resolve(null)): GivenStore {
  return {
    kept: followedReadings(),
    opened: new Map(),
    hashes: new Map(),
    onBytes: () => undefined,
    phrasebook: null,
    fileNow,
  };
}

/** The phrasebook of a text, the built-in one where there is none. Throws InputError where it is none. */
export function phrasebookRead(store: GivenStore, chosen: NamedText | null): Phrasebook {
  const of = JSON.stringify(chosen);
  if (store.phrasebook?.of !== of) {
    const read = readPhrasebook(chosen?.file ?? 'built-in phrasebook', chosen?.text ?? null);
    store.phrasebook = { of, read };
  }
  return store.phrasebook.read;
}

/** The file opened, as it was before where it was given before. Throws InputError if it is a session that is of no use. */
export async function openGiven(store: GivenStore, given: GivenFile, digest: Digest): Promise<OpenedFile> {
  const known = store.opened.get(given.id);
  if (given.life !== undefined) known?.growing?.live(given.life);
  // A file of an earlier step is shorter than what was read of it since.
  if (known !== undefined && given.file.size <= known.given.file.size) return known;
  if (known?.growing != null && known.unpacked.sources.includes(known.growing)) {
    known.growing.grow(given.file);
    const grown = { ...known, given };
    store.opened.set(given.id, grown);
    store.hashes.delete(given.id);
    return grown;
  }
  return await openNew(store, given, digest);
}

/** Opens a file for the first time, or an archive that grew. */
async function openNew(store: GivenStore, given: GivenFile, digest: Digest): Promise<OpenedFile> {
  const index = newIndex();
  const onBytes = (bytes: number): void => store.onBytes(given.id, bytes);
  const fileNow: FileNow = () => store.fileNow(given.id);
  const growing = given.life !== undefined ? growingFile(given, index, onBytes, fileNow) : null;
  const source = growing ?? sourceOf(given, index, onBytes, fileNow);
  const opened = isSession(await source.slice(0, sessionBytes))
    ? await openSaved(given, index, digest)
    : { given, index, unpacked: await unpackFiles([source], platform), session: null, growing };
  store.opened.set(given.id, opened);
  return opened;
}

async function openSaved(given: GivenFile, index: LineIndex, digest: Digest): Promise<OpenedFile> {
  const session = readSession(given.name, await textOf(given), digest);
  const sources = [timelineOf(given.name, session.timelines)];
  return {
    given,
    index,
    unpacked: { sources, failures: [], reports: session.reports, bundles: [] },
    session,
    growing: null,
  };
}

/** The stored timeline in a session, as a file of the session's name. */
function timelineOf(name: string, bytes: Uint8Array): FileSource {
  return {
    name,
    bytes: bytes.length,
    async *open() {
      yield bytes;
    },
  };
}

/** The text of a file, UTF-8. Throws InputError if it cannot be read any more. */
async function textOf(named: GivenFile): Promise<string> {
  return new TextDecoder().decode(await bytesOf(named).slice(0, named.file.size));
}

/** So many bytes are hashed of a file that was of no use, to tell it by. */
const mostHashed = 67_108_864;

/** The SHA-256 of a file; `null` where it is too large to be hashed for that alone, or cannot be read any more. */
export async function hashOf(store: GivenStore, given: GivenFile): Promise<string | null> {
  const { id, name, file } = given;
  const known = store.hashes.get(id);
  if (known !== undefined || file.size > mostHashed) return known ?? null;
  const bytes = await bytesOf(given).slice(0, file.size).catch(asNothing);
  if (bytes === null) return null;
  const hasher = platform.sha256({ name, bytes: file.size });
  await hasher.update(bytes);
  const digest = await hasher.digest();
  store.hashes.set(id, digest);
  return digest;
}

/** Why it was left out is told already. */
function asNothing(error: unknown): null {
  if (error instanceof InputError) return null;
  throw error;
}

/** Forgets the files that are neither in this reading nor in the one before: undoing a step reads none again. */
export function forgetOthers({ opened }: GivenStore, wanted: ReadonlySet<number>): void {
  for (const id of [...opened.keys()]) if (!wanted.has(id)) opened.delete(id);
}
