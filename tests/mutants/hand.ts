import { Worker } from 'node:worker_threads';
import type { Answer, Order } from './worker.ts';

/** A thread of its own that holds the tests of a folder and all mutants of its code. */
export interface Hand {
  /** What it answers; `null` if it takes too long, or breaks: then it is gone for good. */
  ask(order: Order, limitMs: number): Promise<Answer | null>;
  leave(): void;
}

/** How long it may take to load them. */
const loadMs = 300_000;

/** Starts a thread for a folder of `src`. A mutant may hang it or eat its memory, so its memory is bounded. */
export async function hire(folder: string): Promise<Hand> {
  const thread = new Worker('./samples/run.mjs', {
    argv: ['tests/mutants/worker.ts', 'work', folder],
    // What tests print is not for here.
    stdout: true,
    resourceLimits: { maxOldGenerationSizeMb: 1024 },
  });
  let isGone = false;
  const gone = (): void => {
    isGone = true;
    void thread.terminate();
  };
  thread.on('error', gone);
  const next = (limitMs: number): Promise<Answer | null> =>
    new Promise((resolve) => {
      const end = (answer: Answer | null): void => {
        clearTimeout(timer);
        thread.off('message', end);
        thread.off('exit', late);
        resolve(answer);
      };
      const late = (): void => {
        gone();
        end(null);
      };
      const timer = setTimeout(late, limitMs);
      thread.on('message', end);
      thread.on('exit', late);
      if (isGone) late();
    });
  const ready = await next(loadMs);
  if (ready === null) throw new Error(`The tests of ${folder} could not be loaded.`);
  return {
    ask(order, limitMs) {
      thread.postMessage(order);
      return next(limitMs);
    },
    leave: () => void thread.terminate(),
  };
}
