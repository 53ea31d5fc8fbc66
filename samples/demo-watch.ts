import { type ChildProcess, spawn } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { linesInTime, type ReplayedLine } from './replay.ts';

const command = join('dist', 'steadypair.mjs');
const timesAsFast = 60;
const stepMs = 200;

/** The folder of a swap, from when on it is replayed, what it is, and the exit status that the watch must end with. */
const swaps = [
  ['clean-swap', Date.UTC(2026, 2, 14, 9, 12), 'A swap of both modules of RO1', 0],
  ['bad-swap', Date.UTC(2026, 2, 17, 13, 31), 'A swap of one module of RO3 that must not be verified', 1],
] as const;

/**
 * `npm run demo:watch`: writes the logs of the two swaps of the invented site line by line, sixty times as fast as their stamps,
 * and watches them grow. Throws Error if a watch ends otherwise than it should.
 */
export async function demoWatch(): Promise<string> {
  if (!existsSync(command)) throw new Error('dist/steadypair.mjs: not built yet. Run npm run build.');
  let isEnded = false;
  // The watch ends by itself and says the verdict so far.
  const end = (): void => {
    isEnded = true;
  };
  process.on('SIGINT', end);
  for (const [name, from, title, expected] of swaps) {
    if (isEnded) break;
    console.log(`\n${title}, sixty times as fast\n`);
    const status = await replay(join('samples', 'marrow-bay', name), from);
    if (!isEnded && status !== expected)
      throw new Error(`The demo expected exit status ${expected}, the watch ended with ${status}.`);
  }
  process.off('SIGINT', end);
  return '';
}

/** Gives the exit status of the watch. */
async function replay(logs: string, from: number): Promise<number | null> {
  const folder = mkdtempSync(join(tmpdir(), 'steadypair-watch-'));
  const names = readdirSync(logs).filter((name) => !name.endsWith('.yaml'));
  const lines = linesInTime(names.map((name) => ({ name, text: readFileSync(join(logs, name), 'utf8') })));
  const begin = lines.findIndex(({ time }) => time > from);
  append(folder, lines.slice(0, begin));
  const settings = ['--phrasebook', join(logs, 'phrasebook.yaml'), '--job', join(logs, 'job.yaml')];
  const watch = spawn(process.execPath, [command, 'watch', folder, ...settings], { stdio: 'inherit' });
  const ended = new Promise<number | null>((resolve) => watch.on('exit', resolve));
  await writeInTime(folder, lines.slice(begin), from, watch);
  const status = await ended;
  rmSync(folder, { recursive: true });
  return status;
}

/** Writes what is due, file by file, until all is written or the watch has ended; one that goes on then is told to end. */
async function writeInTime(
  folder: string,
  lines: readonly ReplayedLine[],
  from: number,
  watch: ChildProcess,
): Promise<void> {
  const began = Date.now();
  let next = 0;
  while (next < lines.length && watch.exitCode === null) {
    await pause(stepMs);
    const due = from + (Date.now() - began) * timesAsFast;
    const after = lines.findIndex(({ time }, index) => index >= next && time > due);
    const until = after < 0 ? lines.length : after;
    append(folder, lines.slice(next, until));
    next = until;
  }
  await pause(10 * stepMs);
  if (watch.exitCode === null) watch.kill('SIGINT');
}

function append(folder: string, lines: readonly ReplayedLine[]): void {
  const texts = new Map<string, string>();
  for (const { file, text } of lines) texts.set(file, (texts.get(file) ?? '') + text);
  for (const [file, text] of texts) appendFileSync(join(folder, file), text);
}
