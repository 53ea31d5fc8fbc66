import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Given } from '../../support/relations/relation.ts';

/** Leaves the files of a number as they were before the change and after it, each with its phrasebook; gives the folder. */
export function keepFiles(number: number, before: Given, after: Given): string {
  const folder = join('out', 'fuzz', `relations-${number}`);
  write(join(folder, 'before'), before);
  write(join(folder, 'after'), after);
  return folder;
}

function write(folder: string, { files, phrasebook }: Given): void {
  const all = phrasebook === null ? files : { ...files, 'phrasebook.yaml': phrasebook };
  for (const [name, content] of Object.entries(all)) {
    const path = join(folder, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
  }
}
