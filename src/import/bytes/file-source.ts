/** A file, or a member of an archive. It can be opened more than once. */
export interface FileSource {
  readonly name: string;
  /** `null` where only unpacking tells. */
  readonly bytes: number | null;
  /** What is unpacked: how many bytes it has packed. */
  readonly packedBytes?: number | null;
  readonly container?: { readonly file: string; readonly sha256: string };
  /** Its bytes, chunk by chunk. A chunk holds until the second next is asked for: then its memory may be used again. */
  open(): AsyncIterable<Uint8Array>;
}

/** A file as it is stored: it can be read from any place on, as an archive must. */
export interface StoredFile extends FileSource {
  readonly bytes: number;
  slice(from: number, to: number): Promise<Uint8Array>;
}

/**
 * A file that may grow while it is followed. It is the same object as long as what was read of it stays as it was: one that
 * shrank or was replaced is another.
 */
export interface GrowingFile extends StoredFile {
  /** As it is called now; `readAs` is what it was called first, by which rules for files are chosen. */
  readonly name: string;
  readonly readAs: string;
  /** How many bytes it has now. */
  readonly bytes: number;
  /**
   * `grows`: its last line may be half written. `ended`: nothing follows, and the last line counts as it stands. `gone`: its
   * bytes are nowhere any more, and what was read of it is all there is.
   */
  readonly life: 'grows' | 'ended' | 'gone';
  /**
   * What stands in the place of one that is gone; `null` where nothing does. What was read of the old one counts as long as the
   * new one begins where it ended.
   */
  readonly replacedBy: GrowingFile | null;
  /** Its bytes from a place on, as `open` gives them. */
  openFrom(offset: number): AsyncIterable<Uint8Array>;
}

/** True for a file that may grow. */
export function isGrowing(source: FileSource): source is GrowingFile {
  return 'openFrom' in source && 'life' in source;
}

export interface Hasher {
  /** Takes the next bytes; where it takes its time they must stay as they are until it has settled. */
  update(bytes: Uint8Array): void | Promise<void>;
  /** Lower-case hexadecimal. */
  digest(): string | Promise<string>;
  /** The same of the bytes so far, where more may follow. A file whose hasher has it not is read whole whenever it grew. */
  digestSoFar?(): string | Promise<string>;
}

/** A hasher of the bytes of a file: many are worth a thread of their own. */
export type NewHasher = (of: Pick<FileSource, 'name' | 'bytes' | 'packedBytes'>) => Hasher;

/** What the core asks of the machine it runs on. */
export interface Platform {
  readonly sha256: NewHasher;
  /**
   * Unpacks gzip; a piece holds until the second next is asked for, and no longer. Throws DamagedEnd, after all that could be unpacked, where
   * the bytes are damaged or cut off.
   */
  readonly gunzip: (packed: AsyncIterable<Uint8Array>) => AsyncIterable<Uint8Array>;
}
