import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { type Random, seeded } from './random.ts';

/** What a big export holds. */
export interface BigExport {
  readonly bytes: number;
  readonly rows: number;
  /** Changes of value, without the first readings. */
  readonly changes: number;
}

const values = [
  ['partner-ready', 'yes', 'no'],
  ['light', 'steady', 'flashing'],
  ['configuration', 'current', 'pending'],
] as const;
const spacingMs = 10_000;
const begin = Date.UTC(2026, 0, 1);
/** So many pairs' polls are written at once. */
const blockPairs = 3200;

/**
 * Writes a poll export (readings, ISO stamps) of at least `megabytes` MB: `pairs` pairs read every ten seconds, in which
 * the given share of the readings are changes. The same seed gives the same bytes.
 */
export async function writeBig(
  file: string,
  megabytes: string,
  pairs = '8',
  share = '0.001',
  seed = '1',
): Promise<BigExport> {
  const polls = bigPolls(Number(pairs), Number(share), seeded(Number(seed)));
  const stream = createWriteStream(file);
  let [bytes, rows, changes] = [0, 0, 0];
  const write = async (text: string): Promise<void> => {
    // All of it is ASCII: a character is a byte.
    bytes += text.length;
    if (!stream.write(text, 'latin1')) await once(stream, 'drain');
  };
  await write('time,unit,parameter,value\n');
  while (bytes < Number(megabytes) * 1_000_000) {
    const block: string[] = [];
    while (block.length === 0 || block.length * Number(pairs) < blockPairs) {
      const poll = polls();
      block.push(poll.text);
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
 * Gives one poll after the other as text. The rows of a poll differ by its stamp only, so what stands between the stamps
 * is kept and joined with it; the number of readings to the next change is drawn, not each reading.
 */
function bigPolls(
  pairs: number,
  share: number,
  random: Random,
): () => { readonly text: string; readonly rows: number; readonly changes: number } {
  const readings = Array.from({ length: pairs }, (_, index) => `RO${index + 1}`).flatMap((unit) =>
    values.map(([parameter, first, other]) => ({
      now: `,${unit},${parameter},${first}\n`,
      other: `,${unit},${parameter},${other}\n`,
    })),
  );
  const rests = readings.map((r) => r.now);
  let time = begin;
  // The first poll has no changes.
  let next = readings.length + gap(share, random);
  return () => {
    let changes = 0;
    for (; next < readings.length; next += 1 + gap(share, random)) {
      const { now = '', other = '' } = readings[next] ?? {};
      rests[next] = rests[next] === now ? other : now;
      changes += 1;
    }
    next -= readings.length;
    const stamp = `${new Date(time).toISOString().slice(0, 19)}Z`;
    time += spacingMs;
    return { text: stamp + rests.join(stamp), rows: readings.length, changes };
  };
}

/** Readings that stay before one that changes, if each changes with the given chance (geometric distribution). */
function gap(share: number, random: Random): number {
  if (share >= 1) return 0;
  return share <= 0 ? Number.POSITIVE_INFINITY : Math.floor(Math.log(1 - random()) / Math.log(1 - share));
}
