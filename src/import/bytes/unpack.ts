import { eachChunk } from './damaged-end.ts';
import { gunzipLimited } from './expansion-limit.ts';
import type { FileSource, Platform, StoredFile } from './file-source.ts';
import { InputError } from './input-error.ts';
import { zipMembers } from './zip-members.ts';

/** The files to read, with the members of archives in place of the archives; and what cannot be unpacked. */
export interface Unpacked {
  readonly sources: readonly FileSource[];
  readonly failures: readonly InputError[];
}

/**
 * Puts the members of gzip and zip archives in their place; what is no archive stays as it is. Archives are recognised by
 * their first bytes. Nothing is written anywhere: members are unpacked as they are read.
 */
export async function unpackFiles(files: readonly StoredFile[], platform: Platform): Promise<Unpacked> {
  const sources: FileSource[] = [];
  const failures: InputError[] = [];
  for (const file of files) {
    const unpacked = await unpackFile(file, platform);
    sources.push(...unpacked.sources);
    failures.push(...unpacked.failures);
  }
  return { sources, failures };
}

async function unpackFile(file: StoredFile, platform: Platform): Promise<Unpacked> {
  try {
    const kind = kindOf(await file.slice(0, 4));
    if (kind === 'plain') return { sources: [file], failures: [] };
    const container = { file: file.name, sha256: await hashOf(file, platform) };
    if (kind === 'gzip') return { sources: [gunzipped(file, container, platform)], failures: [] };
    const { members, failures } = await zipMembers(file, container);
    const found = await Promise.all(members.map((member) => unpackMember(member, platform)));
    if (members.length + failures.length === 0)
      throw new InputError(file.name, 'the archive holds no logs.', 'Pack the exports into it.');
    return {
      sources: found.flatMap((f) => (f instanceof InputError ? [] : [f])),
      failures: [...failures, ...found.filter((f) => f instanceof InputError)],
    };
  } catch (error) {
    return { sources: [], failures: [asInputError(error)] };
  }
}

function asInputError(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

/** A member that is packed itself: gzip is unpacked, an archive within an archive is not. */
async function unpackMember(member: FileSource, platform: Platform): Promise<FileSource | InputError> {
  const first = await firstBytes(member).catch(asInputError);
  if (first instanceof InputError) return first;
  const kind = kindOf(first);
  if (kind === 'zip')
    return new InputError(member.name, 'it is an archive within an archive.', 'Unpack it first.');
  return kind === 'gzip' && member.container !== undefined
    ? gunzipped(member, member.container, platform)
    : member;
}

function gunzipped(
  packed: FileSource,
  container: NonNullable<FileSource['container']>,
  { gunzip }: Platform,
): FileSource {
  const base = packed.name.split(/[/\\]/).at(-1) ?? packed.name;
  const name = `${packed.name}/${base.replace(/\.(gz|gzip)$/i, '')}`;
  const packedBytes = packed.bytes;
  return { name, bytes: null, packedBytes, container, open: () => gunzipLimited(name, packed, gunzip) };
}

function kindOf([first, second, third, fourth]: Uint8Array): 'gzip' | 'zip' | 'plain' {
  if (first === 0x1f && second === 0x8b) return 'gzip';
  // PK and then a local header, or the end of an empty archive. Source: APPNOTE.TXT 6.3.10 (2022), sections 4.3.7, 4.3.16.
  const isZip = first === 0x50 && second === 0x4b;
  return isZip && ((third === 3 && fourth === 4) || (third === 5 && fourth === 6)) ? 'zip' : 'plain';
}

async function firstBytes(source: FileSource): Promise<Uint8Array> {
  let first = new Uint8Array(0);
  await eachChunk(source, (chunk) => {
    first = chunk.slice(0, 4);
    return chunk.length === 0;
  });
  return first;
}

async function hashOf(file: FileSource, { sha256 }: Platform): Promise<string> {
  const hasher = sha256(file);
  for await (const chunk of file.open()) await hasher.update(chunk);
  return hasher.digest();
}
