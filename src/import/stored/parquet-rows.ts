import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import type { FileSource } from '../bytes/file-source.ts';
import { InputError } from '../bytes/input-error.ts';

/** A Parquet file in memory: a text of its key-value metadata, and its rows. */
export interface ParquetFile {
  /** `undefined` without that key. */
  readonly text: string | undefined;
  rows(): Promise<readonly unknown[]>;
  /** How many groups its rows are in. */
  readonly groups: number;
  /** Some columns of the rows of one group. */
  groupRows(group: number, columns: readonly string[]): Promise<readonly unknown[]>;
}

/** A site's months are kilobytes; what is far beyond that is no timeline. Chosen here. */
const mostBytes = 268_435_456;
/** Figures of a hundred thousand pairs over a year are a third of it. Chosen here. */
const mostBytesOfFigures = 1_073_741_824;
const mostRows = 5_000_000;
const mostPageBytes = 536_870_912;

/** What of this program a Parquet file may hold. */
export type StoredKind = 'timeline' | 'figures';

const mostOf: Readonly<Record<StoredKind, number>> = { timeline: mostBytes, figures: mostBytesOfFigures };
const tooLarge: Readonly<Record<StoredKind, readonly [string, string]>> = {
  timeline: ['it is larger than 256 MiB.', 'Write a timeline for each month.'],
  figures: ['it is larger than 1 GiB.', 'Write the figures of fewer sites into one file.'],
};

/** The last bytes: the length of the metadata before them, and the mark. Source: the same, File Format. */
export const tailBytes = 8;

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
export function parquetBytes(
  source: FileSource,
  kind: StoredKind,
): { add(chunk: Uint8Array): void; whole(): ArrayBuffer } {
  const chunks: Uint8Array[] = [];
  let length = 0;
  return {
    add(chunk) {
      length += chunk.length;
      if (length > mostOf[kind]) throw new InputError(source.name, ...tooLarge[kind]);
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

/** Opens a Parquet file whose metadata hold a text under `key`. Throws InputError if it is damaged. */
export function openParquet(name: string, bytes: ArrayBuffer, key: string): ParquetFile {
  const metadata = guarded(name, () => parquetMetadata(bytes));
  const groups = metadata.row_groups.map((group) => ({
    rows: Number(group.num_rows),
    bytes: Number(group.total_byte_size),
  }));
  const read = (from: number, to: number, columns?: readonly string[]): Promise<readonly unknown[]> => {
    const [before, own] = [groups.slice(0, from), groups.slice(from, to)];
    refuseTooMany(name, own);
    const rowStart = before.reduce((sum, { rows }) => sum + rows, 0);
    const rowEnd = rowStart + own.reduce((sum, { rows }) => sum + rows, 0);
    const asked = { file: bytes, metadata, ...(columns === undefined ? {} : { columns: [...columns] }) };
    return parquetReadObjects({ ...asked, rowStart, rowEnd }).catch((error: unknown) => refuse(name, error));
  };
  return {
    text: metadata.key_value_metadata?.find((entry) => entry.key === key)?.value,
    rows: () => read(0, groups.length),
    groups: groups.length,
    groupRows: (group, columns) => read(group, group + 1, columns),
  };
}

/** Throws InputError if groups of rows are far too much to be held at once. */
function refuseTooMany(
  name: string,
  groups: readonly { readonly rows: number; readonly bytes: number }[],
): void {
  const rows = groups.reduce((sum, group) => sum + group.rows, 0);
  const unpacked = groups.reduce((sum, group) => sum + group.bytes, 0);
  if (rows > mostRows || unpacked > mostPageBytes)
    throw new InputError(
      name,
      `it contains more than ${mostRows} rows or 512 MiB.`,
      'Write one for each month.',
    );
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

/** The line for figures that are whole, and not as this program writes them. */
export function foreignFigures(name: string): InputError {
  return new InputError(
    name,
    'these are not figures written by this version of the program.',
    'Write them again with steadypair fleet, in the format parquet.',
  );
}

/** The line for figures where a timeline is needed. */
export function figuresForTimeline(name: string): InputError {
  return new InputError(
    name,
    'it contains figures of a fleet, which only steadypair fleet reads.',
    'Give the timelines or the logs that they were made from.',
  );
}
