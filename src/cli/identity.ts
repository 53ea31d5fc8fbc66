import type { BigIntStats } from 'node:fs';

/** The same for every name and link of one file or folder, and for no other on this computer. */
export function identityOf({ dev, ino }: BigIntStats): string {
  return `${dev}:${ino}`;
}
