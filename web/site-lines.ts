import type { FileSource } from '../src/pipeline.ts';
import type { ImportedFile, SourceLine } from '../src/vocabulary.ts';
import { bytesOf } from './browser-files.ts';
import type { LineIndex } from './line-index.ts';
import { asKept, type FileLines, linesOfFile, linesOfMember } from './lines-around.ts';
import type { GivenFile, LinesAround } from './protocol.ts';

/** Of a file that was not read yet. */
export function newIndex(): LineIndex {
  return [0];
}

/** Where lines are read back from, by the names of files and of members of archives. */
export function linesByFile(
  logs: readonly GivenFile[],
  sources: readonly FileSource[],
  files: readonly ImportedFile[],
  indexes: ReadonlyMap<string, LineIndex>,
  fileNow: (file: number) => Promise<File | null>,
): ReadonlyMap<string, FileLines> {
  const encodings = new Map(files.map(({ input }) => [input.file, input.encoding]));
  const stored = new Map(logs.map((named) => [named.name, named]));
  return new Map(
    sources.map((source) => {
      const encoding = encodings.get(source.name) ?? 'utf-8';
      const named = stored.get(source.name);
      if (named === undefined) return [source.name, linesOfMember(source, encoding)];
      // What was counted while it was read is right where a line end is one byte.
      const index = encoding.startsWith('utf-16') ? undefined : indexes.get(source.name);
      return [
        source.name,
        linesOfFile(
          bytesOf(named, () => fileNow(named.id)),
          encoding,
          index ?? newIndex(),
        ),
      ];
    }),
  );
}

/** The lines around cited ones, in the order asked for, read back from their files. */
export async function readLines(
  lines: ReadonlyMap<string, FileLines>,
  cited: readonly SourceLine[],
  reach: number,
): Promise<readonly LinesAround[]> {
  const names = [...new Set(cited.map(({ file }) => file))];
  const found = await Promise.all(
    names.map(async (name) => {
      const own = cited.filter(({ file }) => file === name);
      const around = (await lines.get(name)?.around(own, reach)) ?? own.map((at) => asKept(at, 'kept'));
      return own.map((at, index) => [at, around[index] ?? asKept(at, 'kept')] as const);
    }),
  );
  const byLine = new Map(found.flat());
  return cited.map((at) => byLine.get(at) ?? asKept(at, 'kept'));
}
