import { type GrownFile, grownFile } from '../growing-file.ts';
import type { Dressed } from '../stories/dressing.ts';
import { isStamped, timedLines } from '../stories/timed-lines.ts';

/** A file that is written line by line, and where each of its lines ends. */
interface Written {
  readonly file: GrownFile;
  readonly ends: readonly { readonly time: number; readonly bytes: number }[];
}

/** Files that are written as their story goes on. */
export interface WrittenFiles {
  /** Goes on to an instant; gives the files with a line of the story, and whether any has more than before. */
  at(time: number): { readonly sources: readonly GrownFile['source'][]; readonly hasMore: boolean };
}

/** The files of a dressing, of which nothing is written yet. */
export function writtenFiles({ files }: Dressed): WrittenFiles {
  const all = Object.entries(files).map(([name, text]) => writtenFile(name, text));
  return {
    at(time) {
      const before = all.map(({ file }) => file.now.bytes);
      for (const { file, ends } of all) file.now.bytes = ends.findLast((e) => e.time <= time)?.bytes ?? 0;
      return {
        sources: all.filter(({ file }) => file.now.bytes > 0).map(({ file }) => file.source),
        hasMore: all.some(({ file }, index) => file.now.bytes !== before[index]),
      };
    },
  };
}

function writtenFile(name: string, text: string): Written {
  const encoder = new TextEncoder();
  // A note tells the minute: it is written once that is over.
  const later = isStamped(text) ? 0 : 60_000;
  let bytes = 0;
  const ends = timedLines(text).flatMap(({ line, time }) => {
    bytes += encoder.encode(`${line}\n`).length;
    return time === null ? [] : [{ time: time + later, bytes }];
  });
  return { file: grownFile(name, encoder.encode(text)), ends };
}
