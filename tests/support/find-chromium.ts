import { existsSync } from 'node:fs';

/** Path of Chromium: what CHROMIUM names, else Debian's. Throws with what to do if there is none. */
export function findChromium(): string {
  const named = process.env.CHROMIUM;
  const found = [named, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
    (path) => path !== undefined && existsSync(path),
  );
  if (found === undefined)
    throw new Error('Chromium was not found. Install it (apt-get install chromium) or name it in CHROMIUM.');
  return found;
}
