import { eachChunk } from './damaged-end.ts';
import { gunzipLimited } from './expansion-limit.ts';
import type { FileSource, Platform, StoredFile } from './file-source.ts';
import { InputError } from './input-error.ts';
import { isNoLog } from './no-logs.ts';
import { type Bundle, manifestIn, openBundle } from './open-bundle.ts';
import { isOwnReport, reportBytes } from './own-reports.ts';

/** The files to read, with the members of archives in place of the archives; and what cannot be unpacked. */
export interface Unpacked {
  readonly sources: readonly FileSource[];
  readonly failures: readonly InputError[];
  /** Names of what this program wrote itself: no logs. */
  readonly reports: readonly string[];
  /** The bundles among the archives; their logs are among the sources. */
  readonly bundles: readonly Bundle[];
}

/**
 * Puts the members of gzip and zip archives in their place; what is no archive stays as it is. Archives are recognised by
 * their first bytes. Nothing is written anywhere: members are unpacked as they are read.
 */
export async function unpackFiles(files: readonly StoredFile[], platform: Platform): Promise<Unpacked> {
  const found: Unpacked[] = [];
  for (const file of files) found.push(await unpackFile(file, platform).catch(asFailure));
  return together(found);
}

/** No file at all. */
export const nothing: Unpacked = { sources: [], failures: [], reports: [], bundles: [] };

/** What several files gave, in their order. */
export function together(found: readonly Unpacked[]): Unpacked {
  return {
    sources: found.flatMap((f) => f.sources),
    failures: found.flatMap((f) => f.failures),
    reports: found.flatMap((f) => f.reports),
    bundles: found.flatMap((f) => f.bundles),
  };
}

function asFailure(error: unknown): Unpacked {
  if (error instanceof InputError) return { ...nothing, failures: [error] };
  throw error;
}

async function unpackFile(file: StoredFile, platform: Platform): Promise<Unpacked> {
  const head = await file.slice(0, reportBytes);
  const kind = kindOf(head);
  if (kind === 'plain') return logOrReport(file, head);
  const container = { file: file.name, sha256: await hashOf(file, platform) };
  if (kind === 'gzip') return unpackGzip(gunzipped(file, container, platform));
  const { zipMembers } = await import('./zip-members.ts');
  const { members: all, failures } = await zipMembers(file, container);
  const manifest = await manifestIn(file.name, all);
  if (manifest !== null) {
    const opened = await openBundle(file.name, all, manifest, platform);
    const logs = await Promise.all(
      opened.bundle.logs.map((log) => unpackMember(log, platform).catch(asFailure)),
    );
    return together([
      { ...nothing, failures: [...failures, ...opened.failures], bundles: [opened.bundle] },
      ...logs,
    ]);
  }
  const members = all.filter(({ path }) => !isNoLog(path));
  if (members.length + failures.length === 0)
    throw new InputError(file.name, 'the archive contains no logs.', 'Pack the exports into it.');
  const found = await Promise.all(members.map((member) => unpackMember(member, platform).catch(asFailure)));
  return together([{ ...nothing, failures }, ...found]);
}

/** A member that is packed itself: gzip is unpacked, an archive within an archive is not. */
async function unpackMember(member: FileSource, platform: Platform): Promise<Unpacked> {
  const head = await firstBytes(member);
  const kind = kindOf(head);
  if (kind === 'zip') throw withinArchive(member);
  return kind === 'gzip' && member.container !== undefined
    ? unpackGzip(gunzipped(member, member.container, platform))
    : logOrReport(member, head);
}

async function unpackGzip(source: FileSource): Promise<Unpacked> {
  const head = await firstBytes(source);
  if (kindOf(head) !== 'plain') throw withinArchive(source);
  return logOrReport(source, head);
}

function withinArchive({ name }: FileSource): InputError {
  return new InputError(name, 'it is an archive within an archive.', 'Unpack it first.');
}

function logOrReport(source: FileSource, head: Uint8Array): Unpacked {
  return isOwnReport(head) ? { ...nothing, reports: [source.name] } : { ...nothing, sources: [source] };
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
  const first = new Uint8Array(reportBytes);
  let length = 0;
  await eachChunk(source, (chunk) => {
    const part = chunk.subarray(0, reportBytes - length);
    first.set(part, length);
    length += part.length;
    return length < reportBytes;
  });
  return first.subarray(0, length);
}

async function hashOf(file: FileSource, { sha256 }: Platform): Promise<string> {
  const hasher = sha256(file);
  for await (const chunk of file.open()) await hasher.update(chunk);
  return hasher.digest();
}
