import type { Answers, Question, ReadingNews, Refusal, Reply, Request, SiteModel } from './protocol.ts';
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

/** What one reading holds, until it is closed. */
export interface Session {
  /** Throws Refused for what a person can mend, Error for a defect. */
  ask<K extends Exclude<Question['kind'], 'read'>>(
    question: Extract<Question, { readonly kind: K }>,
  ): Promise<Answers[K]>;
  close(): void;
  /** Closes it once what it was asked so far is answered: another reading stands in its place. */
  retire(): void;
}

/** What was read, and what can be asked of it. */
export interface Read {
  readonly site: SiteModel;
  readonly session: Session;
}

/** A reading that goes on. */
export interface Reading {
  /** What was read; it stays open if the reading is stopped. Rejects with Refused for what a person can mend, Error for a defect. */
  readonly done: Promise<Read>;
  /** Ends it. What was read before is as it was. */
  stop(): void;
}

/** The worker that reads; it keeps what it read of a file for the readings to come. */
export interface Reader {
  read(question: Extract<Question, { readonly kind: 'read' }>, onNews: (news: ReadingNews) => void): Reading;
}

interface Waiting {
  readonly resolve: (data: MessageEvent['data']) => void;
  readonly reject: (error: Error) => void;
  readonly onNews: (news: ReadingNews) => void;
}

/** Starts the worker. `fileNow` gives a file of that number as it is at this moment, `null` where there is no other than was given. */
export function openReader(fileNow: (id: number) => Promise<File | null>): Reader {
  const worker = new ReadingWorker();
  const waiting = new Map<number, Waiting>();
  let asked = 0;
  /** Why it does not work. */
  let failed: Error | null = null;
  const send = (request: Request): void => worker.postMessage(request);
  const ask = <K extends Question['kind']>(
    reading: number,
    question: Extract<Question, { readonly kind: K }>,
    onNews: Waiting['onNews'] = () => undefined,
  ): Asked<K> => {
    asked += 1;
    const number = asked;
    const answer = new Promise<Answers[K]>((resolve, reject) => {
      if (failed !== null) reject(failed);
      waiting.set(number, { resolve: (data) => resolve(data.value), reject, onNews });
      send({ kind: 'ask', number, reading, question });
    });
    return { number, answer };
  };
  worker.addEventListener('message', (event: MessageEvent<Reply>) => {
    if (event.data.kind === 'changed') void giveFile(event.data.file, fileNow, send);
    else settle(waiting, event, event.data);
  });
  worker.addEventListener('error', (event) => {
    failed = new Error(event.message);
    for (const one of waiting.values()) one.reject(failed);
    waiting.clear();
  });
  let readings = 0;
  return {
    read(question, onNews) {
      readings += 1;
      const reading = readings;
      const close = (): void => send({ kind: 'close', reading });
      const session = sessionOf((next) => ask(reading, next), waiting, close);
      const { number, answer } = ask<'read'>(reading, question, onNews);
      return {
        done: answer.then((site) => ({ site, session })),
        stop() {
          waiting.delete(number);
          send({ kind: 'stop', number });
          session.close();
        },
      };
    },
  };
}

/** Gives the worker a file as it is now; where that cannot be had, none. */
async function giveFile(
  id: number,
  fileNow: (id: number) => Promise<File | null>,
  send: (request: Request) => void,
): Promise<void> {
  let file: File | null = null;
  try {
    file = await fileNow(id);
  } finally {
    send({ kind: 'file', id, file });
  }
}

/** A number, and the promise of its answer. */
interface Asked<K extends Question['kind']> {
  readonly number: number;
  readonly answer: Promise<Answers[K]>;
}

function sessionOf(
  ask: <K extends Question['kind']>(question: Extract<Question, { readonly kind: K }>) => Asked<K>,
  waiting: Map<number, Waiting>,
  close: () => void,
): Session {
  const asked = new Set<number>();
  let isClosed = false;
  let isRetired = false;
  const end = (): void => {
    isClosed = true;
    close();
  };
  return {
    ask(question) {
      // What asks on is about to be gone: it is not told.
      if (isClosed) return new Promise(() => undefined);
      const { number, answer } = ask(question);
      asked.add(number);
      const answered = (): void => {
        asked.delete(number);
        if (isRetired && asked.size === 0 && !isClosed) end();
      };
      answer.then(answered, answered);
      return answer;
    },
    close() {
      for (const number of asked) waiting.delete(number);
      end();
    },
    retire() {
      isRetired = true;
      if (asked.size === 0 && !isClosed) end();
    },
  };
}

function settle(
  waiting: Map<number, Waiting>,
  event: MessageEvent<Reply>,
  reply: Exclude<Reply, { readonly kind: 'changed' }>,
): void {
  const one = waiting.get(reply.number);
  if (reply.kind === 'news') {
    one?.onNews(reply.news);
    return;
  }
  waiting.delete(reply.number);
  if (reply.kind === 'answer') one?.resolve(event.data);
  else if (reply.kind === 'refused') one?.reject(new Refused(reply.refusal));
  else one?.reject(new Error(reply.what));
}
