import type { FileSource } from '../bytes/file-source.ts';
import { InputError } from '../bytes/input-error.ts';

/** A site's months are kilobytes; what is far beyond that is no timeline. Chosen here, as that of its rows. */
const mostBytes = 268_435_456;
/** Figures of a hundred thousand pairs over a year are a third of it. Chosen here. */
const mostBytesOfFigures = 1_073_741_824;

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
