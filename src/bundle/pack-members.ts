import { DamagedEnd, type FileSource, InputError, type Platform } from '../pipeline.ts';
import type { BundleCase } from './case.ts';
import { type BundledLog, bundleParts, bundleSchema, type Manifest } from './inside.ts';
import type { Mask } from './mask.ts';
import { safePath } from './member-names.ts';
import type { PreparedLog } from './prepare-logs.ts';
import { readmeText } from './readme-text.ts';
import { zipWriter } from './write-zip.ts';

/** Takes the members of a bundle, and closes it with their list. */
export interface BundleWriter {
  readme(inside: BundleCase, isMasked: boolean): Promise<void>;
  /** `isOurs`: this program wrote it, its numbers are not those of a log. */
  text(name: string, text: string, isOurs?: boolean): Promise<void>;
  log(log: PreparedLog): Promise<BundledLog>;
  end(said: Pick<Manifest, 'command' | 'logs' | 'unread'>): Promise<Uint8Array>;
}

/** So many empty lines are not packed: they would unpack to more than any log does. */
const mostEmpty = 8_388_608;

const notes = {
  plain:
    'SHA-256 of a member is that of its bytes in this archive; that of a log is of the original, unpacked.',
  masked:
    'Names, serials and addresses are stand-ins. SHA-256 and names of the original files are left out: they would tell whose they are.',
} as const;

/** A bundle that is written. Throws InputError, from its functions, where a name was left that is to be masked. */
export function bundleWriter(place: string, platform: Platform, mask: Mask | null): BundleWriter {
  const zip = zipWriter(place);
  const members: Manifest['members'] = [];
  const put: Put = async (source, isOurs, isSparse) => {
    refuseLeft(place, mask?.leftIn(source.name) ?? null, 'the name of a member');
    const watched = watch(source, platform, mask?.search(isOurs) ?? null);
    const failed = await zip.add(source.name, watched.bytes(), isSparse).catch(asFailure);
    // A hasher may hold a thread of its own, which ends with its digest.
    const { left, damage, member } = await watched.end();
    if (failed instanceof InputError) throw failed;
    refuseLeft(place, left, source.name);
    members.push(member);
    return { member, damage };
  };
  const text: BundleWriter['text'] = async (name, said, isOurs = false) => {
    await put(inMemory(name, new TextEncoder().encode(said)), isOurs, false);
  };
  return {
    text,
    readme: (inside, isMasked) => text(bundleParts.readme, readmeText(inside, isMasked), true),
    log: (log) => packLog(log, put, platform, mask !== null),
    async end(said) {
      const note = mask === null ? notes.plain : notes.masked;
      const manifest = { schema: bundleSchema, masked: mask !== null, note, members: [...members], ...said };
      await text(bundleParts.manifest, `${JSON.stringify(manifest, null, 1)}\n`, true);
      return zip.end();
    },
  };
}

type Member = Manifest['members'][number];
type Put = (
  source: FileSource,
  isOurs: boolean,
  isSparse: boolean,
) => Promise<{ readonly member: Member; readonly damage: string | null }>;

async function packLog(
  { original, source, lines }: PreparedLog,
  put: Put,
  platform: Platform,
  isMasked: boolean,
): Promise<BundledLog> {
  const emptyLines = lines === null ? 0 : (lines.at(-1)?.[1] ?? 0);
  const { member, damage } = await put(source, false, emptyLines > mostEmpty);
  const of = lines === null ? member : await described(original, platform);
  return {
    member: source.name,
    original: isMasked ? null : safePath(original.name),
    bytes: of.bytes,
    sha256: isMasked ? null : of.sha256,
    lines: lines === null ? 'all' : lines.map(([from, to]) => [from, to]),
    damage,
  };
}

/** The bytes of a source, counted, hashed and searched as they are taken. */
function watch(source: FileSource, platform: Platform, search: ReturnType<Mask['search']> | null) {
  const hasher = platform.sha256(source);
  let bytes = 0;
  let damage: string | null = null;
  async function* all(): AsyncGenerator<Uint8Array> {
    try {
      for await (const chunk of source.open()) {
        bytes += chunk.length;
        await hasher.update(chunk);
        search?.push(chunk);
        yield chunk;
      }
    } catch (error) {
      if (!(error instanceof DamagedEnd)) throw error;
      damage = error.message;
    }
  }
  return {
    bytes: all,
    async end() {
      const member = { name: source.name, bytes, sha256: await hasher.digest() };
      return { left: search?.end() ?? null, damage, member };
    },
  };
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

function refuseLeft(place: string, left: string | null, where: string): void {
  if (left === null) return;
  throw new InputError(
    place,
    `what could not be masked: "${left}" is left in ${where}. Nothing was written.`,
    'Rename it in the logs given, or make the bundle without a mask.',
  );
}

function inMemory(name: string, bytes: Uint8Array): FileSource {
  return {
    name,
    bytes: bytes.length,
    async *open() {
      yield bytes;
    },
  };
}

async function described(source: FileSource, platform: Platform): Promise<Member> {
  const watched = watch(source, platform, null);
  const bytes = watched.bytes();
  while ((await bytes.next()).done !== true);
  return (await watched.end()).member;
}
