import { InputError } from '../src/pipeline.ts';
import HashWorker from './hash-worker.ts?worker&inline';
import type { ClosingHasher } from './hasher.ts';

/** What the worker answers: a chunk that is hashed, or the digest at the end. */
type Answer = Uint8Array<ArrayBuffer> | string;

/** SHA-256 of a file in a worker of its own, beside the reading of the same bytes. Rejects with InputError if it dies. */
export function hashBeside(name: string): ClosingHasher {
  const worker = new HashWorker();
  const waiting: ((answer: Answer) => void)[] = [];
  let fail: (error: InputError) => void = () => undefined;
  const failed = new Promise<never>((_, reject) => {
    fail = reject;
  });
  // Whoever waits for an answer is told; if nobody does, the next who asks.
  failed.catch(() => undefined);
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => waiting.shift()?.(data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    fail(new InputError(name, 'the worker that hashes it died.', 'Close other pages and try again.'));
  });
  const ask = (chunk: Uint8Array<ArrayBuffer> | null): Promise<Answer> => {
    const answer = new Promise<Answer>((resolve) => waiting.push(resolve));
    worker.postMessage(chunk, chunk === null ? [] : [chunk.buffer]);
    return Promise.race([answer, failed]);
  };
  let before: Promise<Answer> = Promise.resolve('');
  let spare: Answer = '';
  return {
    async update(bytes) {
      // These bytes are still read: a copy goes, in the memory of one that came back. One may wait while another is hashed.
      const last = before;
      before = ask(copyOf(bytes, spare));
      spare = await last;
    },
    async digest() {
      const digest = await ask(null);
      worker.terminate();
      return String(digest);
    },
    close: () => worker.terminate(),
  };
}

function copyOf(bytes: Uint8Array, spare: Answer): Uint8Array<ArrayBuffer> {
  if (typeof spare === 'string' || spare.length !== bytes.length) return Uint8Array.from(bytes);
  spare.set(bytes);
  return spare;
}
