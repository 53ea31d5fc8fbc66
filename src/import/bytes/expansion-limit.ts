import type { FileSource, Platform } from './file-source.ts';
import { InputError } from './input-error.ts';

/** What may unpack to any size of its own, in bytes. */
const freeBytes = 16_777_216;
/**
 * A poll in which nothing changes packs to about a fortieth. Deflate cannot pack further than to a thousandth (zlib
 * manual, "Maximum compression factor"): between the two no log is found. Chosen here.
 */
const mostTimes = 400;

/** True for more bytes than any log of that packed size unpacks to. */
export function exceedsExpansionLimit(bytes: number, packedBytes: number): boolean {
  return bytes > freeBytes + packedBytes * mostTimes;
}

/** The refusal of what unpacks to more than that. */
export function expandsTooFar(name: string): InputError {
  return new InputError(
    name,
    `it unpacks to more than ${mostTimes} times its packed size, more than any log.`,
    'If it is a log, unpack it first.',
  );
}

/** The unpacked bytes of a gzip; throws InputError if they exceed the expansion limit. */
export async function* gunzipLimited(
  name: string,
  packed: FileSource,
  gunzip: Platform['gunzip'],
): AsyncGenerator<Uint8Array> {
  let packedBytes = 0;
  let bytes = 0;
  async function* counted(): AsyncGenerator<Uint8Array> {
    for await (const chunk of packed.open()) {
      packedBytes += chunk.length;
      yield chunk;
    }
  }
  for await (const chunk of gunzip(counted())) {
    bytes += chunk.length;
    if (exceedsExpansionLimit(bytes, packedBytes)) throw expandsTooFar(name);
    yield chunk;
  }
}
