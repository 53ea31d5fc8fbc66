import { appendFileSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { linesInTime, type ReplayedLine } from '../../samples/replay.ts';
import { followFiles } from '../../src/cli/followed-files.ts';
import type { Screen } from '../../src/cli/streams.ts';
import { watchFiles } from '../../src/cli/watch.ts';
import type { WatchOptions } from '../../src/cli/watch-turns.ts';

/** What happens to the folder between two looks; gives the moment at which it has happened, milliseconds UTC. */
export type Happening = (folder: string) => number;

export interface WatchedRun {
  readonly status: number;
  readonly out: string;
  readonly err: string;
  readonly folder: string;
}

/** A terminal of 80 columns and 24 rows. */
export const terminal24: Screen = { columns: () => 80, rows: () => 24, onResize: () => () => undefined };

/**
 * Watches a folder of its own to which one thing happens before each look; after the last one the watch is interrupted. Waits take
 * no time, and a second passes before each of them.
 */
export async function watchGrowing(
  happenings: readonly Happening[],
  options: WatchOptions,
  screen?: Screen,
): Promise<WatchedRun> {
  const folder = mkdtempSync(join(tmpdir(), 'watched-'));
  const controller = new AbortController();
  const left = [...happenings];
  let [out, err, moment] = ['', '', 0];
  let tick = (): void => undefined;
  const happen = (): void => {
    const next = left.shift();
    if (next === undefined) controller.abort();
    else moment = next(folder);
  };
  happen();
  const world = {
    thisMoment: () => moment,
    async pause() {
      moment += 1000;
      tick();
      happen();
    },
    interrupted: controller.signal,
    everySecond(each: () => void) {
      tick = each;
      return () => undefined;
    },
    follow: (paths: readonly string[]) => ({ ...followFiles(paths), changed: () => Promise.resolve() }),
  };
  const stdout = {
    write: (text: string) => {
      out += text;
    },
    isTerminal: false,
    ...(screen === undefined ? {} : { screen }),
  };
  const stderr = {
    write: (text: string) => {
      err += text;
    },
    isTerminal: false,
  };
  const status = await watchFiles([folder], options, { stdout, stderr }, world);
  return { status, out, err, folder };
}

/** Writes lines to the ends of their files. */
export function written(lines: readonly ReplayedLine[]): Happening {
  return (folder) => {
    const texts = new Map<string, string>();
    for (const { file, text } of lines) texts.set(file, (texts.get(file) ?? '') + text);
    for (const [file, text] of texts) appendFileSync(join(folder, file), text);
    return (lines.at(-1)?.time ?? 0) + 2000;
  };
}

/** The logs of a swap of the demo site, cut at these clocks of its day; the last part has all that is left. */
export function partsOf(name: 'clean-swap' | 'bad-swap', clocks: readonly string[]): readonly Happening[] {
  const logs = join('samples', 'marrow-bay', name);
  const names = readdirSync(logs).filter((file) => !file.endsWith('.yaml'));
  const lines = linesInTime(
    names.map((file) => ({ name: file, text: readFileSync(join(logs, file), 'utf8') })),
  );
  const day = new Date(lines.find((l) => Number.isFinite(l.time))?.time ?? 0).toISOString().slice(0, 10);
  const ends = [...clocks.map((clock) => Date.parse(`${day}T${clock}Z`)), Number.POSITIVE_INFINITY];
  let from = Number.NEGATIVE_INFINITY;
  return ends.map((end) => {
    const own = lines.filter(({ time }, index) => (index === 0 || time >= from) && time < end);
    from = end;
    return written(own);
  });
}

/** The settings of the demo for one of its swaps. */
export function settingsOf(name: 'clean-swap' | 'bad-swap'): WatchOptions {
  const logs = join('samples', 'marrow-bay', name);
  return { phrasebook: join(logs, 'phrasebook.yaml'), job: join(logs, 'job.yaml') };
}
