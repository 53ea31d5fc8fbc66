import { type Random, seeded } from './random.ts';
import { type BigExport, drawnPlaces, type Poll, writePolls } from './write-polls.ts';

/** The states that are polled, with what they are and what they become; the parameters of a poll that are none of these are gauges. */
const states = [
  ['partner-ready', 'yes', 'no'],
  ['partner-present', 'yes', 'no'],
  ['light', 'steady', 'flashing'],
  ['configuration', 'current', 'pending'],
  ['standby link-a', 'up', 'down'],
  ['standby link-b', 'up', 'down'],
] as const;

/** The names of the states. */
export const stateParameters: readonly string[] = states.map(([name]) => name);

/** A gauge: from where to where it moves, by how much at most, and how it is printed. */
interface MovingGauge {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly steps: number;
  readonly print: (value: number) => string;
}

const load = { low: 20, high: 990, steps: 40, print: (tenths: number) => (tenths / 10).toFixed(1) };
const memory = { low: 2000, high: 3000, steps: 50, print: (pages: number) => String(pages * 4096) };
const gauges: readonly MovingGauge[] = [
  { name: 'active load', ...load },
  { name: 'standby load', ...load },
  { name: 'active free-memory', ...memory },
  { name: 'standby free-memory', ...memory },
];

/**
 * Writes a poll export (readings, ISO stamps) of at least `megabytes` MB: of each of `pairs` pairs six states and four gauges, read
 * every ten seconds. The share `moves` of the gauges' readings differ from the one before (0.05 of them are 0.02 of all rows), and
 * the given share of the states' readings are changes. The same seed gives the same bytes.
 */
export async function writeMovingGauges(
  file: string,
  megabytes: string,
  pairs = '50',
  moves = '0.05',
  share = '0.0002',
  seed = '1',
): Promise<BigExport> {
  const polls = movingPolls(Number(pairs), Number(moves), Number(share), seeded(Number(seed)));
  return writePolls(file, Number(megabytes), polls);
}

/** The rows of a poll differ by its stamp only, so what stands between the stamps is kept and joined with it. */
function movingPolls(pairs: number, moves: number, share: number, random: Random): (stamp: string) => Poll {
  const units = Array.from({ length: pairs }, (_, index) => `RO${index + 1}`);
  const stateRows = units.flatMap((unit) =>
    states.map(([name, first, other]) => ({
      now: `,${unit},${name},${first}\n`,
      other: `,${unit},${name},${other}\n`,
    })),
  );
  const gaugeRows = units.flatMap((unit) =>
    gauges.map((gauge) => ({ ...gauge, unit, value: between(gauge, random()) })),
  );
  const rests = units.flatMap((_, unit) => [
    ...stateRows.slice(unit * states.length, (unit + 1) * states.length).map((row) => row.now),
    ...gaugeRows.slice(unit * gauges.length, (unit + 1) * gauges.length).map(restOf),
  ]);
  const changing = drawnPlaces(stateRows.length, share, random);
  const moving = drawnPlaces(gaugeRows.length, moves, random);
  return (stamp) => {
    const changed = changing();
    for (const place of changed) {
      const { now = '', other = '' } = stateRows[place] ?? {};
      const row = rowOf(place, states.length, 0);
      rests[row] = rests[row] === now ? other : now;
    }
    for (const place of moving()) {
      const gauge = gaugeRows[place];
      if (gauge === undefined) continue;
      gauge.value = moved(gauge, gauge.value, random);
      rests[rowOf(place, gauges.length, states.length)] = restOf(gauge);
    }
    return { text: stamp + rests.join(stamp), rows: rests.length, changes: changed.length };
  };
}

/** The row of a poll that the reading at a place stands in: all of a unit stand together, the states before the gauges. */
function rowOf(place: number, ofUnit: number, before: number): number {
  return Math.floor(place / ofUnit) * (states.length + gauges.length) + before + (place % ofUnit);
}

function restOf({
  unit,
  name,
  value,
  print,
}: MovingGauge & { readonly unit: string; readonly value: number }): string {
  return `,${unit},${name},${print(value)}\n`;
}

function between({ low, high }: MovingGauge, share: number): number {
  return low + Math.floor(share * (high - low));
}

/** Another value, up or down; at its ends it turns. */
function moved({ low, high, steps }: MovingGauge, value: number, random: Random): number {
  const by = (1 + Math.floor(random() * steps)) * (random() < 0.5 ? -1 : 1);
  return value + by < low || value + by > high ? value - by : value + by;
}
