import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import type { Random } from './random.ts';

/** What a big export holds. */
export interface BigExport {
  readonly bytes: number;
  readonly rows: number;
  /** Changes of state, without the first readings. */
  readonly changes: number;
}

/** The rows that are read under one stamp. */
export interface Poll {
  readonly text: string;
  readonly rows: number;
  readonly changes: number;
}

const spacingMs = 10_000;
const begin = Date.UTC(2026, 0, 1);
/** Polls are written so many rows at a time, or a few more. */
const blockRows = 9600;

/**
 * Writes polls (readings, ISO stamps), ten seconds apart, one after the other until there are `megabytes` MB: `next` gives what is
 * read under a stamp.
 */
export async function writePolls(
  file: string,
  megabytes: number,
  next: (stamp: string) => Poll,
): Promise<BigExport> {
  const stream = createWriteStream(file);
  let [bytes, rows, changes, time] = [0, 0, 0, begin];
  const write = async (text: string): Promise<void> => {
    // All of it is ASCII: a character is a byte.
    bytes += text.length;
    if (!stream.write(text, 'latin1')) await once(stream, 'drain');
  };
  await write('time,unit,parameter,value\n');
  while (bytes < megabytes * 1_000_000) {
    const block: string[] = [];
    for (let inBlock = 0; inBlock < blockRows; time += spacingMs) {
      const poll = next(`${new Date(time).toISOString().slice(0, 19)}Z`);
      block.push(poll.text);
      inBlock += poll.rows;
      rows += poll.rows;
      changes += poll.changes;
    }
    await write(block.join(''));
  }
  stream.end();
  await once(stream, 'finish');
  return { bytes, rows, changes };
}

/**
 * The places, in lists of so many readings that come one after the other, of those that are drawn, each with the given chance: the
 * number of readings to the next one is drawn, not each reading. The first list is left out.
 */
export function drawnPlaces(length: number, chance: number, random: Random): () => readonly number[] {
  let next = length + gap(chance, random);
  return () => {
    const drawn: number[] = [];
    for (; next < length; next += 1 + gap(chance, random)) drawn.push(next);
    next -= length;
    return drawn;
  };
}

/** Readings that stay before one that is drawn (geometric distribution). */
function gap(chance: number, random: Random): number {
  if (chance >= 1) return 0;
  return chance <= 0 ? Number.POSITIVE_INFINITY : Math.floor(Math.log(1 - random()) / Math.log(1 - chance));
}
