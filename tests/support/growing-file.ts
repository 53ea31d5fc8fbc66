import type { GrowingFile } from '../../src/import/bytes/file-source.ts';

/** A file in memory of which a test says how much is there, and which counts the bytes that it delivered. */
export interface GrownFile {
  readonly source: GrowingFile;
  /** Its name and life can be set; so many of its bytes are there now. */
  readonly now: { bytes: number; name: string; life: GrowingFile['life']; replacedBy: GrowingFile | null };
  delivered(): number;
}

/** A file of which nothing is there yet. A piece holds until the second next is asked for, and no longer. */
export function grownFile(name: string, content: Uint8Array, size = 65_536): GrownFile {
  const now: GrownFile['now'] = { bytes: 0, name, life: 'grows', replacedBy: null };
  let delivered = 0;
  const count = (piece: Uint8Array): Uint8Array => {
    delivered += piece.length;
    return piece;
  };
  const source: GrowingFile = {
    get name() {
      return now.name;
    },
    readAs: name,
    get bytes() {
      return now.bytes;
    },
    get life() {
      return now.life;
    },
    get replacedBy() {
      return now.replacedBy;
    },
    open: () => source.openFrom(0),
    async *openFrom(offset) {
      if (now.life === 'gone') throw new Error('The bytes of this file are gone.');
      const memory = [new Uint8Array(size), new Uint8Array(size)];
      const to = now.bytes;
      for (let at = offset, turn = 0; at < to; at += size, turn = 1 - turn) {
        const piece = memory[turn]?.fill(0x23) ?? new Uint8Array(0);
        const part = content.subarray(at, Math.min(at + size, to));
        piece.set(part);
        yield count(piece.subarray(0, part.length));
      }
    },
    slice: (from, to) => Promise.resolve(count(content.slice(from, Math.min(to, now.bytes)))),
  };
  return { source, now, delivered: () => delivered };
}
