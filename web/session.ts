import type { Answers, Question, Refusal, Reply } from './protocol.ts';
import ReadingWorker from './worker.ts?worker&inline';

/** What the worker refused to do, in the user's words. */
export class Refused extends Error {
  readonly refusal: Refusal;

  constructor(refusal: Refusal) {
    super(`${refusal.where}: ${refusal.what} ${refusal.fix}`);
    this.name = 'Refused';
    this.refusal = refusal;
  }
}

/** What went wrong, in the user's words; anything but a refusal is a defect. */
export function refusalOf(error: unknown): Refusal {
  if (error instanceof Refused) return error.refusal;
  const what = error instanceof Error ? error.message : String(error);
  return { where: 'this page', what: `it has a defect: ${what}.`, fix: 'Tell whoever maintains it.' };
}

/** A worker of its own: it holds what was read until it is closed. */
export interface Session {
  /** Throws Refused for what a person can mend, Error for a defect. */
  ask<K extends Question['kind']>(question: Extract<Question, { readonly kind: K }>): Promise<Answers[K]>;
  /** Ends it, in the middle of reading too. */
  close(): void;
}

interface Waiting {
  readonly resolve: (data: MessageEvent['data']) => void;
  readonly reject: (error: Error) => void;
}

/** Starts a worker; `onProgress` is told of every file as it is read. */
export function openSession(onProgress: (file: string, bytes: number, rows: number) => void): Session {
  const worker = new ReadingWorker();
  const waiting = new Map<number, Waiting>();
  let asked = 0;
  worker.addEventListener('message', (event: MessageEvent<Reply>) => {
    const reply = event.data;
    if (reply.kind === 'progress') {
      onProgress(reply.file, reply.bytes, reply.rows);
      return;
    }
    const one = waiting.get(reply.number);
    waiting.delete(reply.number);
    if (reply.kind === 'answer') one?.resolve(event.data);
    else if (reply.kind === 'refused') one?.reject(new Refused(reply.refusal));
    else one?.reject(new Error(reply.what));
  });
  worker.addEventListener('error', (event) => {
    for (const one of waiting.values()) one.reject(new Error(event.message));
    waiting.clear();
  });
  return {
    ask(question) {
      asked += 1;
      const number = asked;
      return new Promise((resolve, reject) => {
        waiting.set(number, { resolve: (data) => resolve(data.value), reject });
        worker.postMessage({ number, question });
      });
    },
    close: () => worker.terminate(),
  };
}
