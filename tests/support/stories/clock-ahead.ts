import type { Dressed } from './dressing.ts';
import { shiftText } from './timed-lines.ts';

/** A dressing in which the clock of one file is so many seconds ahead. Throws RangeError for field notes but by whole days. */
export function withClockAhead(dressed: Dressed, file: string, seconds: number): Dressed {
  const { files, sources } = dressed;
  return {
    ...dressed,
    files: { ...files, [file]: shiftText(files[file] ?? '', 1000 * seconds) },
    sources: sources.map((s) => (s.file === file ? { ...s, aheadSeconds: s.aheadSeconds + seconds } : s)),
  };
}
