import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import type { FileSource } from '../bytes/file-source.ts';
import { InputError } from '../bytes/input-error.ts';

/** A Parquet file in memory: a text of its key-value metadata, and its rows. */
export interface ParquetFile {
  /** `undefined` without that key. */
  readonly text: string | undefined;
  rows(): Promise<readonly unknown[]>;
}

/** A site's months are kilobytes; what is far beyond that is no timeline. Chosen here. */
const mostBytes = 268_435_456;
const mostRows = 5_000_000;
const mostPageBytes = 536_870_912;

/** How many of its first bytes show that a file is Parquet. */
export const magicBytes = 5;

/**
 * Recognised by `PAR1` and a byte that no text has there: a log may begin with a pair of that name. Source: Apache Parquet
 * format 2.11 (2025), File Format; what follows the mark is a Thrift structure whose first field is an i32 (0x15).
 */
export function isParquet([first, second, third, fourth, fifth]: Uint8Array): boolean {
  return first === 0x50 && second === 0x41 && third === 0x52 && fourth === 0x31 && fifth === 0x15;
}

/** Takes the bytes of a file, a chunk at a time. Throws InputError if they are too many to be read in memory. */
export function parquetBytes(source: FileSource): { add(chunk: Uint8Array): void; whole(): ArrayBuffer } {
  const chunks: Uint8Array[] = [];
  let length = 0;
  return {
    add(chunk) {
      length += chunk.length;
      if (length > mostBytes)
        throw new InputError(source.name, 'it is larger than 256 MiB.', 'Write a timeline for each month.');
      // A copy: the memory of a chunk is used again.
      chunks.push(Uint8Array.from(chunk));
    },
    whole() {
      const whole = new Uint8Array(new ArrayBuffer(length));
      let at = 0;
      for (const chunk of chunks) {
        whole.set(chunk, at);
        at += chunk.length;
      }
      return whole.buffer;
    },
  };
}

/** Opens a Parquet file. Throws InputError if it is damaged, or holds a text under `key` in its metadata and is far too long. */
export function openParquet(name: string, bytes: ArrayBuffer, key: string): ParquetFile {
  const metadata = guarded(name, () => parquetMetadata(bytes));
  const text = metadata.key_value_metadata?.find((entry) => entry.key === key)?.value;
  const unpacked = metadata.row_groups.reduce((sum, group) => sum + Number(group.total_byte_size), 0);
  // How long one of another writer is matters to nobody.
  if (text !== undefined && (metadata.num_rows > mostRows || unpacked > mostPageBytes))
    throw new InputError(
      name,
      `it contains more than ${mostRows} rows or 512 MiB.`,
      'Write one for each month.',
    );
  return {
    text,
    rows: () => parquetReadObjects({ file: bytes, metadata }).catch((error: unknown) => refuse(name, error)),
  };
}

function guarded<T>(name: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    return refuse(name, error);
  }
}

/** Whatever stops the reader of the format lies in the bytes: they are all that it is given. */
function refuse(name: string, error: unknown): never {
  if (!(error instanceof Error)) throw error;
  throw damagedTimeline(name);
}

/** The line for a file that is whole, and says what no timeline of this program does. */
export function foreignTimeline(name: string): InputError {
  return new InputError(
    name,
    'it is not a timeline written by this program.',
    'Write one from the logs with steadypair timeline, in the format parquet.',
  );
}

/** The line for a timeline whose bytes do not hold together. */
export function damagedTimeline(name: string): InputError {
  return new InputError(
    name,
    'this Parquet file is damaged or cut off.',
    'Copy it again, or write the timeline again.',
  );
}
