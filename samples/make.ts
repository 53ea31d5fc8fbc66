import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fleetFiles } from './fleet-files.ts';
import { sampleFiles } from './site.ts';

/** Writes the committed samples anew below `folder`. */
export async function writeSamples(folder: string): Promise<readonly string[]> {
  const stories = sampleFiles().map(({ path, text }) => ({ path, content: text }));
  return [...stories, ...(await fleetFiles())].map(({ path, content }) => {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
    return file;
  });
}
