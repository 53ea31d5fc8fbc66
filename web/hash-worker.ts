/// <reference lib="webworker" />
import { hasher } from './hasher.ts';

const hash = hasher();

async function answer(piece: Uint8Array<ArrayBuffer> | null): Promise<void> {
  if (piece === null) {
    self.postMessage(await hash.digest());
    return;
  }
  await hash.update(piece);
  // It goes back, to be used again.
  self.postMessage(piece, [piece.buffer]);
}

self.addEventListener(
  'message',
  ({ data }: MessageEvent<Uint8Array<ArrayBuffer> | null>) => void answer(data),
);
