import { createHash, randomBytes } from 'node:crypto';
import { rmSync } from 'node:fs';
import { lstat, readdir, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';

// A file that is not yet whole lies beside its place, hidden, under a name that says which run of which computer writes it.
const partNames = /^\.steadypair-([0-9a-f]{8})-(\d+)-[0-9a-f]{12}\.part$/;

/** What another computer left behind is removed after a day: no run takes that long to write. */
const abandonedMs = 86_400_000;

const endings = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** A name that no other run uses. */
export function newPartName(): string {
  return `.steadypair-${computer()}-${process.pid}-${randomBytes(6).toString('hex')}.part`;
}

function computer(): string {
  return createHash('sha256').update(hostname()).digest('hex').slice(0, 8);
}

/** Removes from a folder what runs that were killed left of their files. */
export async function removeParts(folder: string): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    const [, host, pid] = partNames.exec(name) ?? [];
    if (host === undefined) continue;
    const path = join(folder, name);
    const isLeft = host === computer() ? !isRunning(Number(pid)) : await isOld(path);
    // One that stays is in nobody's way.
    if (isLeft) await rm(path, { force: true }).catch(() => undefined);
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Another user's: it runs.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

async function isOld(path: string): Promise<boolean> {
  return lstat(path).then(
    ({ mtimeMs }) => Date.now() - mtimeMs > abandonedMs,
    () => false,
  );
}

/** Removes the parts if what writes them fails, or if the program is told to end meanwhile. */
export async function whileWriting(parts: readonly string[], write: () => Promise<void>): Promise<void> {
  const end = (signal: NodeJS.Signals): void => {
    for (const part of parts) rmSync(part, { force: true });
    process.kill(process.pid, signal);
  };
  for (const ending of endings) process.once(ending, end);
  try {
    await write();
  } catch (error) {
    for (const part of parts) await rm(part, { force: true }).catch(() => undefined);
    throw error;
  } finally {
    for (const ending of endings) process.off(ending, end);
  }
}
