import type { ImportedFile } from '../src/vocabulary.ts';

/** A file that was left out, and the one with the same content that stands for it. */
export interface Twin {
  readonly file: string;
  readonly of: string;
}

/**
 * Each content once: of files with one SHA-256 that were understood alike, whatever their names, the first. Where a name says
 * whose file it is, the same content under another name is about another half, and stays.
 */
export function withoutTwins(files: readonly ImportedFile[]): {
  readonly files: readonly ImportedFile[];
  readonly twins: readonly Twin[];
} {
  const first = new Map<string, string>();
  const twins: Twin[] = [];
  const once = files.filter((file) => {
    const key = keyOf(file);
    const known = first.get(key);
    if (known === undefined) first.set(key, file.input.file);
    else twins.push({ file: file.input.file, of: known });
    return known === undefined;
  });
  return { files: once, twins };
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
