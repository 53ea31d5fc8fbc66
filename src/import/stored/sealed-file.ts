import { eachChunk } from '../bytes/damaged-end.ts';
import type { FileSource, NewHasher } from '../bytes/file-source.ts';
import { matchesChecksum } from './checksum.ts';
import { damagedTimeline, parquetBytes, type StoredKind } from './parquet-file.ts';
import type { ParquetFile } from './parquet-rows.ts';

/** A Parquet file with its SHA-256; `text`: what this program wrote into its metadata, `null` where it did not write it. */
export interface SealedFile {
  readonly parquet: ParquetFile;
  readonly text: string | null;
  readonly sha256: string;
}

/** How it is read. */
export interface SealedOptions {
  readonly sha256: NewHasher;
  readonly onProgress?: (bytes: number, rows: number) => void;
}

/**
 * Reads a Parquet file whole. Before anything is decoded its checksum is compared: what is damaged is not read, not even where it
 * would still make sense. Throws InputError if it is damaged or too large.
 */
export async function readSealed(
  source: FileSource,
  { sha256, onProgress }: SealedOptions,
  kind: StoredKind,
): Promise<SealedFile> {
  const { name } = source;
  const bytes = parquetBytes(source, kind);
  const hasher = sha256(source);
  let length = 0;
  const damage = await eachChunk(source, async (chunk) => {
    bytes.add(chunk);
    await hasher.update(chunk);
    length += chunk.length;
    onProgress?.(length, 0);
    return true;
  });
  if (damage !== null) throw damagedTimeline(name);
  const whole = bytes.whole();
  const isIntact = await matchesChecksum(name, new Uint8Array(whole), sha256);
  if (isIntact === false) throw damagedTimeline(name);
  const { openParquet } = await import('./parquet-rows.ts');
  const parquet = openParquet(name, whole, 'steadypair');
  const text = isIntact === null ? null : (parquet.text ?? null);
  return { parquet, text, sha256: await hasher.digest() };
}

/** What a text of JSON says; `undefined` where it is none. */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
