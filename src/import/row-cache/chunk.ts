/** A chunk of a file, to be read byte by byte or several bytes at a time. */
export interface Chunk {
  readonly bytes: Uint8Array;
  readonly view: DataView;
}

export function chunkOf(bytes: Uint8Array): Chunk {
  return { bytes, view: new DataView(bytes.buffer, bytes.byteOffset, bytes.length) };
}
