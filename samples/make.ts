import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { sampleFiles } from './site.ts';

/** Writes the committed samples anew below `folder`. */
export function writeSamples(folder: string): readonly string[] {
  return sampleFiles().map(({ path, text }) => {
    const file = join(folder, 'marrow-bay', path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
    return file;
  });
}
