import type { FollowedFiles } from './followed-files.ts';

/** What a watch needs of the world around it: clocks, waits, the person who ends it. */
export interface WatchWorld {
  /** This computer's clock, milliseconds UTC. */
  thisMoment(): number;
  /** Settles after so long, or when the watch is interrupted. */
  pause(ms: number): Promise<void>;
  readonly interrupted: AbortSignal;
  /** Calls every second until what it gives is called. */
  everySecond(tick: () => void): () => void;
  follow(paths: readonly string[]): FollowedFiles;
}

const signals = ['SIGINT', 'SIGTERM'] as const;
/** A second press that comes later than this is meant: the first is told on by what was being written. */
const againMs = 1000;

/** This process: interrupted by SIGINT and SIGTERM until `release` is called; a second one ends it at once. */
export function processWorld(follow: WatchWorld['follow']): WatchWorld & { readonly release: () => void } {
  const controller = new AbortController();
  let firstAt = 0;
  const release = (): void => {
    for (const signal of signals) process.off(signal, end);
  };
  const end = (signal: NodeJS.Signals): void => {
    if (!controller.signal.aborted) {
      firstAt = Date.now();
      controller.abort();
    } else if (Date.now() - firstAt > againMs) {
      release();
      process.kill(process.pid, signal);
    }
  };
  for (const signal of signals) process.on(signal, end);
  return {
    thisMoment: () => Date.now(),
    pause: (ms) => pauseFor(ms, controller.signal),
    interrupted: controller.signal,
    everySecond(tick) {
      const timer = setInterval(tick, 1000);
      return () => clearInterval(timer);
    },
    follow,
    release,
  };
}

/** Settles after so long, or at once when the signal is given. */
function pauseFor(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) return resolve();
    const end = (): void => {
      clearTimeout(timer);
      signal.removeEventListener('abort', end);
      resolve();
    };
    const timer = setTimeout(end, ms);
    signal.addEventListener('abort', end);
  });
}
