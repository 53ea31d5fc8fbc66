import process from 'node:process';
import { parentPort } from 'node:worker_threads';
import { createServer, type Plugin, type ViteDevServer } from 'vite';
import { mutatedFiles, testFiles } from './sources.ts';

/** What one test does without a mutant: how long it takes, and which mutants' places it comes by. */
export interface Recorded {
  readonly name: string;
  readonly milliseconds: number;
  readonly reached: readonly number[];
}

/** To the worker: run every test without a mutant, or one test, by its place among them, with one. */
export type Order = { readonly mutant: null } | { readonly mutant: number; readonly place: number };
/** From the worker. */
export type Answer =
  | { readonly kind: 'ready' }
  | { readonly kind: 'recorded'; readonly tests: readonly Recorded[]; readonly atLoad: readonly number[] }
  | { readonly kind: 'tried'; readonly passed: boolean };

const standIn = 'tests/mutants/stand-in.ts';
const reader = 'tests/support/read-text.ts';

/** What the tests read their files with, so that it reads the same files once. */
function readingOnce(code: string): string {
  const renamed = code.replace('export async function readTexts(', 'async function readAnyTime(');
  return `import { readOnce } from '/tests/mutants/read-once.ts';${renamed}\nexport const readTexts = readOnce(readAnyTime);`;
}

/** The code with its mutants, and tests that are collected instead of run. */
function mutants(folder: string): Plugin {
  const files = mutatedFiles(folder);
  return {
    name: 'mutants',
    enforce: 'pre',
    load: (id) => files.get(id)?.code ?? null,
    transform: (code, id) => {
      if (id.endsWith(standIn)) return null;
      // A package is never asked for through plugins here: the import itself is changed.
      const collecting = code.replace("from 'vitest'", `from '/${standIn}'`);
      return id.endsWith(reader) && folder !== 'import' ? readingOnce(collecting) : collecting;
    },
  };
}

/** The life of a worker: loads the tests of a folder once, and answers orders until it is ended. */
export async function work(folder: string): Promise<never> {
  let active = -1;
  let reached: Set<number> | null = new Set();
  const isMutant = (id: number): boolean => {
    reached?.add(id);
    return id === active;
  };
  Object.defineProperty(globalThis, 'isMutant', { value: isMutant });
  const server = await createServer({
    configFile: false,
    define: { STEADYPAIR_VERSION: JSON.stringify('test') },
    plugins: [mutants(folder)],
    server: { middlewareMode: true, ws: false, watch: null },
    appType: 'custom',
    logLevel: 'error',
  });
  // The command runs itself where its module is loaded and the arguments name a program, and these are not for it.
  process.argv.splice(1);
  const tests = await collect(server, folder);
  const atLoad = [...reached];
  const answer = (message: Answer): void => parentPort?.postMessage(message);

  async function record(): Promise<void> {
    const recorded: Recorded[] = [];
    for (const { name, run } of tests) {
      reached = new Set();
      const begin = performance.now();
      await run();
      recorded.push({ name, milliseconds: performance.now() - begin, reached: [...reached] });
    }
    answer({ kind: 'recorded', tests: recorded, atLoad });
  }

  async function tryOne(mutant: number, place: number): Promise<void> {
    reached = null;
    active = mutant;
    const passed = await passes(tests[place]?.run);
    active = -1;
    answer({ kind: 'tried', passed });
  }

  parentPort?.on('message', (order: Order) => {
    if (order.mutant === null) void record();
    else void tryOne(order.mutant, order.place);
  });
  answer({ kind: 'ready' });
  return new Promise(() => {});
}

async function collect(
  server: ViteDevServer,
  folder: string,
): Promise<readonly { readonly name: string; readonly run: () => unknown }[]> {
  const { collected } = await server.ssrLoadModule(`/${standIn}`);
  for (const file of testFiles(folder)) await server.ssrLoadModule(`/${file}`);
  return collected;
}

async function passes(run: (() => unknown) | undefined): Promise<boolean> {
  try {
    await run?.();
    return true;
  } catch {
    return false;
  }
}
