import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join, resolve } from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { writeManySites } from './many-sites.ts';

const python = '/usr/bin/python3';
const command = resolve('dist', 'steadypair.mjs');
const folder = resolve('out', 'scale');
const sites = 40;
const pairs = 10;

/**
 * `npm run scale`: the review of 40 sites by Dask's scheduler and two workers of this machine, one of which is killed half-way, and
 * by one process; sets the exit status 1 if they do not give the same bytes.
 */
export async function scale(): Promise<string> {
  if (spawnSync(python, ['-c', 'import distributed']).status !== 0) {
    process.exitCode = 1;
    return 'Dask is not there: apt-get install -y python3-distributed';
  }
  rmSync(folder, { recursive: true, force: true });
  const timelines = join(folder, 'timelines');
  const figures = join(folder, 'figures');
  mkdirSync(figures, { recursive: true });
  await writeManySites(timelines, sites, pairs);
  const scheduled = await onDask(timelines, figures);
  const alone = spawnSync(process.execPath, [command, 'fleet', timelines, '--json'], {
    maxBuffer: 1 << 30,
  }).stdout;
  const isSame = scheduled.review.equals(alone);
  if (!isSame) process.exitCode = 1;
  return [
    `${sites} sites of ${pairs} pairs: one of two workers was killed when ${scheduled.doneWhenKilled} sites were done; all ${readdirSync(figures).length} are.`,
    isSame
      ? `The review of their figures is that of one process, byte for byte: ${alone.length} bytes of JSON.`
      : 'The review of their figures is NOT that of one process.',
  ].join('\n');
}

interface Scheduled {
  readonly review: Buffer;
  readonly doneWhenKilled: number;
}

async function onDask(timelines: string, figures: string): Promise<Scheduled> {
  const port = await freePort();
  const address = `tcp://127.0.0.1:${port}`;
  const scheduler = dask('scheduler', '--host', '127.0.0.1', '--port', String(port), '--no-dashboard');
  // Without a nanny nothing begins a worker again: the scheduler must do without it.
  const worker = (): ChildProcess =>
    dask('worker', address, '--nthreads', '1', '--no-nanny', '--no-dashboard', '--host', '127.0.0.1');
  const workers = [worker(), worker()];
  try {
    const review = spawn(
      python,
      [join('samples', 'at-scale', 'review_sites.py'), address, command, timelines, figures],
      { stdio: ['ignore', 'pipe', 'inherit'] },
    );
    const pieces: Buffer[] = [];
    review.stdout.on('data', (piece: Buffer) => pieces.push(piece));
    const ended = new Promise<number | null>((done) => review.on('close', done));
    while (review.exitCode === null && doneIn(figures) < sites / 2) await after(100);
    const doneWhenKilled = doneIn(figures);
    workers[0]?.kill('SIGKILL');
    const status = await ended;
    if (status !== 0) throw new Error(`The review on Dask ended with the status ${status}.`);
    return { review: Buffer.concat(pieces), doneWhenKilled };
  } finally {
    for (const own of [...workers, scheduler]) own.kill('SIGKILL');
  }
}

function doneIn(figures: string): number {
  return existsSync(figures) ? readdirSync(figures).filter((n) => n.endsWith('.figures.parquet')).length : 0;
}

function dask(part: 'scheduler' | 'worker', ...args: readonly string[]): ChildProcess {
  const module = `distributed.cli.dask_${part}`;
  return spawn(python, ['-m', module, ...args], { stdio: 'ignore', cwd: folder });
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  await new Promise((done) => server.close(done));
  if (address === null || typeof address === 'string') throw new Error('No port is free.');
  return address.port;
}
