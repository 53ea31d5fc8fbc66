import { readJob } from '../pipeline.ts';
import { checkBundleOptions } from './bundle-options.ts';
import type { Status } from './command.ts';
import { type FollowedFiles, followFiles } from './followed-files.ts';
import { yamlAt } from './open-given.ts';
import type { Streams } from './streams.ts';
import { seeThrough } from './things.ts';
import type { WatchDisplay } from './watch-display.ts';
import { jsonDisplay, lineDisplay } from './watch-lines.ts';
import { finish, turnUntilOver, type Watch } from './watch-loop.ts';
import { panelDisplay } from './watch-panel.ts';
import { keptReport } from './watch-report.ts';
import { turnsOf, type WatchOptions } from './watch-turns.ts';
import { processWorld, type WatchWorld } from './watch-world.ts';
import { watchedSwaps } from './watched-swaps.ts';

/** Watches files in the world of this process. */
export async function watchGiven(
  paths: readonly string[],
  options: WatchOptions,
  streams: Streams,
): Promise<Status> {
  const world = processWorld(followFiles);
  try {
    return await watchFiles(paths, options, streams, world);
  } finally {
    world.release();
  }
}

/** Watches files until the swaps that were in work are over, or the world interrupts; gives the status of the verdict. */
export async function watchFiles(
  paths: readonly string[],
  options: WatchOptions,
  streams: Streams,
  world: WatchWorld,
): Promise<Status> {
  // A name that leads nowhere is wrong rather than late; a pattern may fit later.
  for (const path of paths) if (!/[*?[{]/.test(path)) await seeThrough(path);
  checkBundleOptions(options);
  const job = options.job === undefined ? null : await yamlAt(options.job);
  if (job !== null) readJob(job.file, job.text);
  const followed = world.follow(paths);
  try {
    const look = await turnsOf(followed, paths, options, job, streams);
    const display = displayFor(options, streams, world);
    try {
      const report =
        options.out === undefined ? null : keptReport(options.out, world.thisMoment, display.tell);
      const watch: Watch = { look, display, swaps: watchedSwaps(), report, world, streams, options };
      const last = await turnUntilOver(watch, untilChanged(followed, world));
      return await finish(watch, last);
    } finally {
      display.end();
    }
  } finally {
    await followed.close();
  }
}

function displayFor(options: WatchOptions, streams: Streams, world: WatchWorld): WatchDisplay {
  if (options.json === true) return jsonDisplay(streams);
  const { screen } = streams.stdout;
  return screen === undefined ? lineDisplay(streams) : panelDisplay(streams, screen, world.thisMoment);
}

/** Waits for a change of the files, but no longer than until the watch is interrupted. */
function untilChanged(
  followed: FollowedFiles,
  { interrupted }: WatchWorld,
): (mostMs: number) => Promise<void> {
  const aborted = new Promise<void>((resolve) => {
    interrupted.addEventListener('abort', () => resolve());
  });
  return (mostMs) =>
    interrupted.aborted ? Promise.resolve() : Promise.race([followed.changed(mostMs), aborted]);
}
