import type { ImportedFile } from '../src/vocabulary.ts';

/** A file that was left out, and the one with the same content that stands for it. */
export interface Twin {
  readonly file: string;
  readonly of: string;
}

/**
 * Each content once: of files with one SHA-256 that were understood alike, whatever their names, the one that was given first, by
 * its `rank`: what is given later changes nothing. Where a name says
 * whose file it is, the same content under another name is about another half, and stays.
 */
export function withoutTwins(
  files: readonly ImportedFile[],
  rank: (file: ImportedFile) => number,
): { readonly files: readonly ImportedFile[]; readonly twins: readonly Twin[] } {
  const keys = files.map(keyOf);
  const first = new Map<string, ImportedFile>();
  for (const [index, file] of files.entries()) {
    const key = keys[index] ?? '';
    const known = first.get(key);
    if (known === undefined || rank(file) < rank(known)) first.set(key, file);
  }
  const twins = files.flatMap((file, index) => {
    const used = first.get(keys[index] ?? '');
    return used === undefined || used === file ? [] : [{ file: file.input.file, of: used.input.file }];
  });
  return { files: files.filter((file, index) => first.get(keys[index] ?? '') === file), twins };
}

function keyOf({ input, streams }: ImportedFile): string {
  const { sha256, layout, zone, from, to } = input;
  return JSON.stringify([
    sha256,
    layout,
    zone,
    from,
    to,
    streams.map(({ unit, subject }) => [unit, subject]),
  ]);
}
