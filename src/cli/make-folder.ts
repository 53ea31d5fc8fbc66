import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { lookAt } from './things.ts';

/**
 * Makes a folder and those above it, one by one: Node's own way of doing so never ends where one can be neither found nor made, as
 * below /proc. Throws what the system says.
 */
export async function makeFolder(folder: string): Promise<void> {
  if ((await lookAt(folder)) !== null) return;
  const above = dirname(folder);
  if (above !== folder) await makeFolder(above);
  await mkdir(folder).catch((error: unknown) => {
    // Another run may have made it meanwhile.
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
  });
}
