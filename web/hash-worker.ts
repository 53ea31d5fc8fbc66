/// <reference lib="webworker" />
import { hasher } from './hasher.ts';

const hash = hasher();

async function answer(chunk: Uint8Array<ArrayBuffer> | null): Promise<void> {
  if (chunk === null) {
    self.postMessage(await hash.digest());
    return;
  }
  await hash.update(chunk);
  // It goes back, to be used again.
  self.postMessage(chunk, [chunk.buffer]);
}

self.addEventListener(
  'message',
  ({ data }: MessageEvent<Uint8Array<ArrayBuffer> | null>) => void answer(data),
);
