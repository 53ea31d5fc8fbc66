import { availableParallelism } from 'node:os';
import type { MessagePort, Worker } from 'node:worker_threads';
import { type FileSource, InputError, readPhrasebook } from '../pipeline.ts';
import type { FailureFigures, SiteFigures } from '../vocabulary.ts';
import type { FoundFile } from './folder-files.ts';
import type { SiteTask } from './given-sites.ts';
import { readSite } from './read-site.ts';
import { isFileOnDisk, storedFile } from './stored-file.ts';

/** What a thread is asked: the files of one site, as they lie on the disk. */
interface ThreadTask {
  readonly files: readonly FoundFile[];
  readonly settings: SiteTask['settings'];
}

/** What it answers: the figures, or why there are none; `defect` is what a program error says. */
type ThreadAnswer =
  | { readonly figures: SiteFigures }
  | { readonly refused: FailureFigures }
  | { readonly defect: string };

/** How sites are read on threads. */
interface Threads<Site> {
  readonly newThread: () => Worker;
  readonly keep: (site: SiteFigures) => Site;
  readonly onFile: (source: FileSource) => void;
}

/**
 * The figures of each site, read on as many threads as there are processors; in the order of the tasks, whichever is done first.
 * Rejects with InputError where a thread would throw it, or dies.
 */
export async function readOnThreads<Site>(
  tasks: readonly SiteTask[],
  { newThread, keep, onFile }: Threads<Site>,
): Promise<readonly Site[]> {
  const sites: (readonly [number, Site])[] = [];
  let next = 0;
  const threads = Array.from({ length: Math.min(tasks.length, availableParallelism()) }, newThread);
  try {
    await Promise.all(
      threads.map(async (thread) => {
        for (let index = next++; index < tasks.length; index = next++) {
          const task = tasks[index];
          if (task === undefined) return;
          task.sources.forEach(onFile);
          sites.push([index, keep(await ask(thread, task))]);
        }
      }),
    );
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()));
  }
  return sites.sort(([a], [b]) => a - b).map(([, site]) => site);
}

/** Whether all that is read together lies on the disk as it is: a member of an archive does not, and what came by a pipe is gone. */
export function isOnDisk({ sources }: SiteTask): boolean {
  return sources.every((source) => isFileOnDisk(source) && !/^\/(dev|proc)\//.test(source.name));
}

async function ask(thread: Worker, { sources, settings }: SiteTask): Promise<SiteFigures> {
  const files = sources.filter(isFileOnDisk).map(({ found }) => found);
  const task: ThreadTask = { files, settings };
  const answer = await new Promise<ThreadAnswer>((resolve, reject) => {
    const died = (): void => reject(diedOver(task));
    // What it died of is not the user's: that it died is told.
    thread.once('error', died).once('exit', died);
    thread.once('message', (told: ThreadAnswer) => {
      thread.off('error', died).off('exit', died);
      resolve(told);
    });
    thread.postMessage(task);
  });
  if ('figures' in answer) return answer.figures;
  if ('defect' in answer) throw new Error(answer.defect);
  const { where, what, fix, kind, setting } = answer.refused;
  throw new InputError(where, what, fix, kind, setting);
}

function diedOver({ files }: ThreadTask): InputError {
  const [first] = files;
  return new InputError(
    first?.name ?? '',
    'the memory of this computer was not enough to read its site.',
    'Write its figures by itself, from fewer months, or give the program more memory.',
  );
}

/** Answers what a thread is asked, one after another. */
export function serveSites(port: MessagePort): void {
  const phrasebook = readPhrasebook('built-in phrasebook', null);
  port.on('message', async ({ files, settings }: ThreadTask) => {
    const sources = files.map(storedFile);
    const answer = await readSite({ sources, settings }, { phrasebook })
      .then((figures): ThreadAnswer => ({ figures }))
      .catch(answerOf);
    port.postMessage(answer);
  });
}

function answerOf(error: unknown): ThreadAnswer {
  if (!(error instanceof InputError))
    return { defect: error instanceof Error ? error.message : String(error) };
  const { where, what, fix, kind, setting } = error;
  return { refused: { where, what, fix, kind, setting } };
}
