import type { Dressed, Files } from '../stories/dressing.ts';
import { isStamped, joinLines, type TimedLine, timedLines } from '../stories/timed-lines.ts';

/** The lines of files with the instants at which they were written. */
export type LineFiles = Readonly<Record<string, readonly TimedLine[]>>;

export function linesOfFiles({ files }: Dressed): LineFiles {
  return Object.fromEntries(
    Object.entries(files).map(([name, text]) => {
      // A note tells the minute: it is written once that is over.
      const later = isStamped(text) ? 0 : 60_000;
      const lines = timedLines(text).map(({ line, time }) => ({
        line,
        time: time === null ? null : time + later,
      }));
      return [name, lines];
    }),
  );
}

/** What the files held at an instant: all lines up to it, files without any left out. */
export function filesAt(all: LineFiles, time: number): Files {
  return Object.fromEntries(
    Object.entries(all).flatMap(([name, lines]) => {
      const kept = lines.filter((l) => l.time === null || l.time <= time);
      return kept.some((l) => l.time !== null) ? [[name, joinLines(kept)] as const] : [];
    }),
  );
}
