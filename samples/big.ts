import { type Random, seeded } from './random.ts';
import { type BigExport, drawnPlaces, type Poll, writePolls } from './write-polls.ts';

const values = [
  ['partner-ready', 'yes', 'no'],
  ['light', 'steady', 'flashing'],
  ['configuration', 'current', 'pending'],
] as const;

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
  return writePolls(file, Number(megabytes), bigPolls(Number(pairs), Number(share), seeded(Number(seed))));
}

/** The rows of a poll differ by its stamp only, so what stands between the stamps is kept and joined with it. */
function bigPolls(pairs: number, share: number, random: Random): (stamp: string) => Poll {
  const readings = Array.from({ length: pairs }, (_, index) => `RO${index + 1}`).flatMap((unit) =>
    values.map(([parameter, first, other]) => ({
      now: `,${unit},${parameter},${first}\n`,
      other: `,${unit},${parameter},${other}\n`,
    })),
  );
  const rests = readings.map((r) => r.now);
  const changing = drawnPlaces(readings.length, share, random);
  return (stamp) => {
    const changed = changing();
    for (const place of changed) {
      const { now = '', other = '' } = readings[place] ?? {};
      rests[place] = rests[place] === now ? other : now;
    }
    return { text: stamp + rests.join(stamp), rows: readings.length, changes: changed.length };
  };
}
