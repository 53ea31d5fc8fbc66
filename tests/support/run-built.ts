import { spawnSync } from 'node:child_process';

/** What a run of the built command in a process of its own came to. */
export interface BuiltRun {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
  /** Peak of its resident memory. */
  readonly peakMegabytes: number;
}

/**
 * The process writes its peak when it ends. `VmHWM` is of its own memory alone; the maximum that `getrusage` gives
 * counts that of the process which started it too. Source: Linux, proc(5).
 */
const tellPeak = `import { readFileSync } from 'node:fs';
process.on('exit', () => process.stderr.write('peak ' + /VmHWM:\\s*(\\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1]));`;

/** Runs `dist/steadypair.mjs`. Linux only. Throws if the process did not say its peak. */
export function runBuilt(...args: readonly string[]): BuiltRun {
  const hook = `data:text/javascript,${encodeURIComponent(tellPeak)}`;
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', hook, 'dist/steadypair.mjs', ...args],
    { encoding: 'utf8', maxBuffer: 1e9 },
  );
  const peak = /peak (\d+)$/.exec(stderr);
  if (peak === null) throw new Error(`The command did not say its peak memory: ${stderr}`);
  return { status, stdout, stderr: stderr.slice(0, peak.index), peakMegabytes: Number(peak[1]) / 1000 };
}
