import type { ClockOffset, FileFigures, ImportedFile } from '../vocabulary.ts';
import { stampYears } from './far-stamps.ts';
import { strayLines } from './stray-stamps.ts';

/** What is told of files, as figures of each: in the order given. `offsets` are those of their clocks, at most one of each. */
export function fileFigures(
  files: readonly ImportedFile[],
  offsets: readonly ClockOffset[] = [],
): readonly FileFigures[] {
  const byName = new Map(offsets.map((offset) => [offset.file, offset]));
  return files.map((file) => ({
    input: file.input,
    pairs: [...new Set(file.streams.map((s) => s.subject.pair))],
    notices: file.notices,
    stamps: stampYears(file),
    strays: strayLines(file),
    offset: byName.get(file.input.file) ?? null,
  }));
}
