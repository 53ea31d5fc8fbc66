import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type Mutant, mutate } from './mutate.ts';

/** A file of the code, with all its mutants compiled in. */
export interface MutatedFile {
  readonly file: string;
  readonly code: string;
  readonly mutants: readonly Mutant[];
}

/** Why nothing can be mutated in a folder, in one line, and what to name instead; `null` where it has both code and tests. */
export function refusalOf(folder: string): string | null {
  const has = (name: string): boolean =>
    name !== '' && existsSync(join('src', name)) && existsSync(join('tests', 'behaviour', name));
  if (has(folder)) return null;
  const known = readdirSync('src').filter(has).join(', ');
  return `mutants: "${folder}" is no folder of both src/ and tests/behaviour/. Name one of them: ${known}.`;
}

/** Every file of a folder of `src` by its full path; the mutants are numbered through, file by file. */
export function mutatedFiles(folder: string): ReadonlyMap<string, MutatedFile> {
  const files = new Map<string, MutatedFile>();
  let first = 0;
  for (const file of filesIn(join('src', folder), '.ts')) {
    const { code, mutants } = mutate(readFileSync(file, 'utf8'), first);
    first += mutants.length;
    files.set(resolve(file), { file, code, mutants });
  }
  return files;
}

/** The test files of a folder. */
export function testFiles(folder: string): readonly string[] {
  return filesIn(join('tests', 'behaviour', folder), '.test.ts');
}

function filesIn(folder: string, ending: string): readonly string[] {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  return names.filter((name) => name.endsWith(ending)).map((name) => join(folder, name));
}
