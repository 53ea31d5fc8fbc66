import type { NewHasher } from '../bytes/file-source.ts';

const mark = 'steadypair/sha256/';
const digits = 64;
/** The checksum is the last text but one of a Parquet file's metadata: it stands this near to the end. */
const tailBytes = 1024;

/**
 * Whether a stored timeline is as it was written: its checksum is the SHA-256 of the file with zeros in place of the digits
 * of the checksum. `null` where there is none.
 */
export async function matchesChecksum(
  name: string,
  bytes: Uint8Array,
  sha256: NewHasher,
): Promise<boolean | null> {
  const start = Math.max(0, bytes.length - tailBytes);
  // One byte, one character.
  const tail = new TextDecoder('windows-1252').decode(bytes.subarray(start));
  const place = tail.lastIndexOf(mark);
  if (place < 0) return null;
  const at = start + place + mark.length;
  const hasher = sha256({ name, bytes: bytes.length });
  await hasher.update(bytes.subarray(0, at));
  await hasher.update(new TextEncoder().encode('0'.repeat(digits)));
  await hasher.update(bytes.subarray(at + digits));
  return tail.slice(place + mark.length, place + mark.length + digits) === (await hasher.digest());
}
