import { digestOf, platform } from '../src/cli/platform.ts';
import { importFiles, readPhrasebook } from '../src/pipeline.ts';
import { timelineParquet } from '../src/report/timeline-parquet.ts';
import { journalCsv, messagesOf } from './exports.ts';
import {
  fleetFrom,
  fleetPlans,
  fleetTo,
  medianSyncSeconds,
  newFirmware,
  restartsPerYear,
  type ToldPair,
  tellFleet,
} from './fleet.ts';
import { plain } from './wordings.ts';

/** A file of the demo fleet: its path below `samples`, and its bytes. */
export interface FleetFile {
  readonly path: string;
  readonly content: Uint8Array;
}

/** The seed of the committed fleet. */
export const fleetSeed = 61;

/** The committed fleet of Marrow Bay: two years of each pair as a stored timeline, and what was injected. */
export async function fleetFiles(): Promise<readonly FleetFile[]> {
  const told = tellFleet(fleetPlans, fleetSeed);
  const timelines = await Promise.all(told.map(timelineFile));
  return [...timelines, { path: 'truth/fleet.json', content: new TextEncoder().encode(truthOf(told)) }];
}

/** The journal that the pair's station kept over the two years, up to its last line: the partner is ready. */
export function journalOf({ story }: ToldPair): string {
  const last = [{ time: story.to, unit: story.pair, text: 'partner ready' }];
  const stamp = { form: 'iso-offset', zone: 'Europe/Lisbon', decimals: 3 } as const;
  return journalCsv(messagesOf(story, plain, last), ['time', 'unit', 'message'], ',', stamp);
}

async function timelineFile(told: ToldPair): Promise<FleetFile> {
  const name = told.plan.pair.toLowerCase();
  const bytes = new TextEncoder().encode(journalOf(told));
  const source = {
    name: `${name}-journal.csv`,
    bytes: bytes.length,
    async *open() {
      yield bytes;
    },
  };
  const { files, failures } = await importFiles([source], {
    phrasebook: readPhrasebook('fleet.yaml', 'name: Marrow Bay\n'),
    zone: null,
    order: null,
    year: null,
    sha256: platform.sha256,
  });
  if (failures[0] !== undefined) throw failures[0];
  return { path: `marrow-bay-fleet/${name}.parquet`, content: timelineParquet(files, [], digestOf) };
}

/** What was injected: the rates, the losses to the millisecond, the work, and what must be found. */
function truthOf(told: readonly ToldPair[]): string {
  const iso = (time: number): string => new Date(time).toISOString();
  const truth = {
    seed: fleetSeed,
    from: iso(fleetFrom),
    to: iso(fleetTo),
    restartsPerYear,
    medianSyncSeconds,
    badPairs: told.filter(({ plan }) => plan.lossesPerYear > 2).map(({ plan }) => plan.pair),
    growingPairs: told.filter(({ plan }) => plan.growth > 1).map(({ plan }) => plan.pair),
    slowerFirmware: newFirmware,
    pairs: told.map(({ plan, losses }) => ({
      ...plan,
      reflashedAt: plan.reflashedAt === null ? null : iso(plan.reflashedAt),
      swappedAt: plan.swappedAt === null ? null : iso(plan.swappedAt),
      losses: losses.map(iso),
    })),
  };
  return `${JSON.stringify(truth, null, 1)}\n`;
}
