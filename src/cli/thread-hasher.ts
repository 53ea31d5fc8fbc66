import { Worker } from 'node:worker_threads';
import { type Hasher, InputError } from '../pipeline.ts';

/** Answers each chunk when it is hashed, `true` with the digest so far and `null` with the digest. As text, since the command is one file. */
const program = `
const { parentPort } = require('node:worker_threads');
const hash = require('node:crypto').createHash('sha256');
parentPort.on('message', (chunk) => {
  const isAsked = chunk === null || chunk === true;
  if (!isAsked) hash.update(chunk);
  parentPort.postMessage(isAsked ? (chunk ? hash.copy() : hash).digest('hex') : '');
});
`;

interface Asked {
  readonly resolve: (answer: string) => void;
  readonly reject: (error: InputError) => void;
}

/**
 * SHA-256 of a file on a thread of its own, beside the work on the same bytes: shared memory is not copied on its way
 * there. Rejects with InputError if the thread dies.
 */
export function threadHasher(name: string): Hasher {
  const worker = new Worker(program, { eval: true });
  // What it died of is not the user's: that it died is told at its end.
  worker.on('error', () => undefined);
  const asked: Asked[] = [];
  let isDead = false;
  const died = (): void => {
    isDead = true;
    const error = new InputError(
      name,
      'its SHA-256 could not be computed.',
      'Close other programs and try again.',
    );
    for (const { reject } of asked.splice(0)) reject(error);
  };
  worker.on('exit', died);
  worker.on('message', (answer: unknown) => {
    asked.shift()?.resolve(String(answer));
    if (asked.length === 0) worker.unref();
  });
  // A thread that waits for chunks of a file that was given up keeps nothing alive.
  worker.unref();
  const ask = (chunk: Uint8Array | true | null): Promise<string> =>
    new Promise((resolve, reject) => {
      asked.push({ resolve, reject });
      if (isDead) {
        died();
        return;
      }
      worker.ref();
      if (chunk === null || chunk === true || chunk.buffer instanceof SharedArrayBuffer)
        worker.postMessage(chunk);
      else postCopy(worker, chunk);
    });
  return {
    async update(chunk) {
      await ask(chunk);
    },
    digestSoFar: () => ask(true),
    async digest() {
      const digest = await ask(null);
      await worker.terminate();
      return digest;
    },
  };
}

/** A chunk of memory that is not shared goes as a copy: a view takes all that it is a view of along. */
function postCopy(worker: Worker, chunk: Uint8Array): void {
  const copy = Uint8Array.from(chunk);
  worker.postMessage(copy, [copy.buffer]);
}
