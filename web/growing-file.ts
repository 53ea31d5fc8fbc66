import type { GrowingFile } from '../src/pipeline.ts';
import { bytesOf, chunks, type FileNow } from './browser-files.ts';
import { type LineIndex, pieceBytes } from './line-index.ts';
import type { NamedFile } from './protocol.ts';

/** A browser's file that is followed: the same object while it grows. */
export interface GrowingBrowserFile extends GrowingFile {
  /** Goes on with the file as it is now, its first bytes the same. */
  grow(file: File): void;
  live(life: GrowingFile['life']): void;
}

/** A file that is followed as the import takes it; `index`, `onBytes` and `fileNow` as `sourceOf` takes them. */
export function growingFile(
  { name, file, life: first = 'grows' }: NamedFile,
  index: LineIndex,
  onBytes: (bytes: number) => void,
  fileNow: FileNow,
): GrowingBrowserFile {
  let bytes = bytesOf({ name, file }, fileNow);
  let life: GrowingFile['life'] = first;
  const slice = async (from: number, to: number): Promise<Uint8Array> => {
    const piece = await bytes.slice(from, to);
    onBytes(piece.length);
    return piece;
  };
  const openFrom = (offset: number): AsyncIterable<Uint8Array> =>
    chunks({ size: bytes.size, slice }, index, offset);
  return {
    name,
    readAs: name,
    get life() {
      return life;
    },
    replacedBy: null,
    get bytes() {
      return bytes.size;
    },
    open: () => openFrom(0),
    openFrom,
    slice,
    grow(next) {
      // What was counted of the last piece was counted of its begin alone.
      index.length = Math.min(index.length, 1 + Math.floor(bytes.size / pieceBytes));
      bytes = bytesOf({ name, file: next }, fileNow);
    },
    live(now) {
      life = now;
    },
  };
}
