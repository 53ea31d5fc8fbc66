import {
  type BundledLog,
  bundleParts,
  type Manifest,
  noSettings,
  readManifest,
  readSettings,
  type Settings,
} from './bundle-schema.ts';
import { DamagedEnd, eachChunk } from './damaged-end.ts';
import type { FileSource, Platform } from './file-source.ts';
import { InputError } from './input-error.ts';
import { isNoLog } from './no-logs.ts';
import type { ZipMember } from './zip-members.ts';

/** A text that was read, and what it is called. */
export interface NamedYaml {
  readonly file: string;
  readonly text: string;
}

/** What a bundle holds: the logs of a case, in the order in which they were read, and what they were read with. */
export interface Bundle {
  readonly name: string;
  readonly logs: readonly FileSource[];
  readonly phrasebook: NamedYaml | null;
  readonly job: NamedYaml | null;
  readonly settings: Settings;
  readonly isMasked: boolean;
}

/** No text of a bundle that a person or this program wrote is longer. */
const mostText = 10_000_000;

/** The manifest among the members of an archive; `null` where it is no bundle. Throws InputError for one of no use. */
export async function manifestIn(name: string, members: readonly ZipMember[]): Promise<Manifest | null> {
  const own = members.find(({ path }) => path === bundleParts.manifest);
  if (own === undefined || own.bytes > mostText) return null;
  const manifest = readManifest((await textOf(own)) ?? '');
  if (manifest !== undefined) return manifest;
  throw new InputError(
    name,
    `its ${bundleParts.manifest} is damaged, or a later version of this program wrote it.`,
    'Ask for the bundle again, or unpack it and name its logs.',
  );
}

/**
 * Opens a bundle: every member is compared with its SHA-256, and what differs, is missing or is not listed is a failure. What
 * could not be read where the bundle was made is a failure here too, so that it leads to the same answer.
 */
export async function openBundle(
  name: string,
  members: readonly ZipMember[],
  manifest: Manifest,
  platform: Platform,
): Promise<{ readonly bundle: Bundle; readonly failures: readonly InputError[] }> {
  const { good, failures } = await intact(name, members, manifest, platform);
  const text = async (path: string): Promise<NamedYaml | null> => {
    const member = good.get(path);
    if (member === undefined) return null;
    const found = member.bytes > mostText ? null : await textOf(member);
    if (found !== null) return { file: member.name, text: found };
    failures.push(
      new InputError(member.name, 'it is too large for what it is.', 'Ask for the bundle again.'),
    );
    return null;
  };
  const [phrasebook, job, said] = [
    await text(bundleParts.phrasebook),
    await text(bundleParts.job),
    await text(bundleParts.settings),
  ];
  const settings = said === null ? noSettings : readSettings(said.text);
  // Of settings that differ from their SHA-256 a line was said already.
  const isListed = manifest.members.some((member) => member.name === bundleParts.settings);
  if (settings === null || !isListed)
    failures.push(
      new InputError(
        `${name}/${bundleParts.settings}`,
        'the settings of the bundle cannot be used.',
        'Ask for the bundle again.',
      ),
    );
  const logs = manifest.logs.flatMap((log) => logOf(log, good));
  const unread = manifest.unread.map(
    ({ where, what, fix, kind }) => new InputError(`${name}/${where}`, what, fix, kind),
  );
  return {
    bundle: {
      name,
      logs,
      phrasebook,
      job,
      settings: named(name, settings ?? noSettings),
      isMasked: manifest.masked,
    },
    failures: [...failures, ...unread],
  };
}

/** The reference clock is that of a log, which has the name of its bundle before its own. */
function named(name: string, settings: Settings): Settings {
  const { reference } = settings;
  return reference === null ? settings : { ...settings, reference: `${name}/${reference}` };
}

function logOf({ member, damage }: BundledLog, good: ReadonlyMap<string, ZipMember>): readonly FileSource[] {
  const found = member.startsWith(bundleParts.logs) ? good.get(member) : undefined;
  if (found === undefined) return [];
  const { name, bytes, open } = found;
  return [{ name, bytes, open: damage === null ? open : () => endingEarly(open(), damage) }];
}

async function* endingEarly(bytes: AsyncIterable<Uint8Array>, damage: string): AsyncGenerator<Uint8Array> {
  yield* bytes;
  throw new DamagedEnd(damage);
}

/** The members that are what the manifest lists. */
async function intact(
  name: string,
  members: readonly ZipMember[],
  manifest: Manifest,
  platform: Platform,
): Promise<{ readonly good: ReadonlyMap<string, ZipMember>; readonly failures: InputError[] }> {
  const good = new Map<string, ZipMember>();
  const failures: InputError[] = [];
  const byPath = new Map(members.map((member) => [member.path, member]));
  const listed = new Set([bundleParts.manifest, ...manifest.members.map((member) => member.name)]);
  for (const { name: path, sha256 } of manifest.members) {
    const member = byPath.get(path);
    const wrong =
      member === undefined
        ? 'it is listed in the manifest and is not there.'
        : await wrongWith(member, sha256, platform);
    if (member !== undefined && wrong === null) good.set(path, member);
    else if (wrong !== null) failures.push(leftOut(`${name}/${path}`, wrong));
  }
  for (const { path, name: place } of members)
    if (!listed.has(path) && !isNoLog(path)) failures.push(leftOut(place, 'the manifest does not list it.'));
  return { good, failures };
}

function leftOut(where: string, what: string): InputError {
  return new InputError(where, `${what} It was left out.`, 'Ask for the bundle again.');
}

async function wrongWith(member: ZipMember, sha256: string, platform: Platform): Promise<string | null> {
  const hasher = platform.sha256(member);
  const wrong = await eachChunk(member, async (chunk) => {
    await hasher.update(chunk);
    return true;
  }).catch(asFailure);
  // A hasher may hold a thread of its own, which ends with its digest.
  const digest = await hasher.digest();
  if (wrong instanceof InputError) return wrong.what;
  const isSame = wrong === null && digest === sha256;
  return isSame ? null : 'its content is not what the manifest lists: SHA-256 differs.';
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

/** A small text, UTF-8; `null` if it is longer than it says. */
async function textOf(source: FileSource): Promise<string | null> {
  const decoder = new TextDecoder();
  const parts: string[] = [];
  let length = 0;
  await eachChunk(source, (chunk) => {
    length += chunk.length;
    parts.push(decoder.decode(chunk, { stream: true }));
    return length <= mostText;
  });
  return length > mostText ? null : parts.join('') + decoder.decode();
}
