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

export interface Hasher {
  /** Takes the next bytes; where it takes its time they must stay as they are until it has settled. */
  update(bytes: Uint8Array): void | Promise<void>;
  /** Lower-case hexadecimal. */
  digest(): string | Promise<string>;
}

/** A hasher of the bytes of a file: many are worth a thread of their own. */
export type NewHasher = (of: Pick<FileSource, 'name' | 'bytes' | 'packedBytes'>) => Hasher;

/** What the core asks of the machine it runs on. */
export interface Platform {
  readonly sha256: NewHasher;
  /** Unpacks gzip. Throws DamagedEnd, after all that could be unpacked, where the bytes are damaged or cut off. */
  readonly gunzip: (packed: AsyncIterable<Uint8Array>) => AsyncIterable<Uint8Array>;
}
