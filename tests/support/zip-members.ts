import {
  BlobReader,
  TextReader,
  Uint8ArrayReader,
  Uint8ArrayWriter,
  ZipReader,
  ZipWriter,
} from '@zip.js/zip.js';

/** The members of a zip by their names, read by another program than the one that wrote it. */
export async function membersOf(bytes: Uint8Array): Promise<ReadonlyMap<string, Uint8Array>> {
  const reader = new ZipReader(new BlobReader(new Blob([bytes.slice()])));
  const members = new Map<string, Uint8Array>();
  for (const entry of await reader.getEntries())
    if (!entry.directory) members.set(entry.filename, await entry.getData(new Uint8ArrayWriter()));
  return members;
}

/** The text of a member; throws if it is not there. */
export function textIn(members: ReadonlyMap<string, Uint8Array>, name: string): string {
  const found = members.get(name);
  if (found === undefined) throw new Error(`${name} is not among ${[...members.keys()].join(', ')}`);
  return new TextDecoder().decode(found);
}

/** A zip of some members. */
export async function zipWith(
  members: Iterable<readonly [string, string | Uint8Array]>,
): Promise<Uint8Array<ArrayBuffer>> {
  const writer = new ZipWriter(new Uint8ArrayWriter());
  for (const [name, content] of members)
    await writer.add(
      name,
      typeof content === 'string' ? new TextReader(content) : new Uint8ArrayReader(content),
    );
  return new Uint8Array(await writer.close());
}
