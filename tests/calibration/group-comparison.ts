import type { Random } from '../../samples/random.ts';
import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import { compareGroups, type SyncTime } from '../../src/fleet/sync-groups.ts';
import type { BringUpCause } from '../../src/vocabulary.ts';
import { countHits } from './count-hits.ts';
import { madeFrom } from './made-timelines.ts';
import type { Study, Trial } from './study.ts';
import { timeShapes } from './sync-series.ts';

interface Setting {
  readonly name: string;
  readonly sizes: readonly number[];
  readonly cases: number;
  /** Of so many causes in turn. */
  readonly causes?: number;
  /** Share of attempts that are not seen to end. */
  readonly unfinished?: number;
  /** Seconds between two readings; 0 where times are exact. */
  readonly spacing?: number;
}

const settings: readonly Setting[] = [
  { name: '5 and 5', sizes: [5, 5], cases: 1500 },
  { name: '3 and 30', sizes: [3, 30], cases: 1500 },
  { name: '20 and 20, a third unfinished', sizes: [20, 20], cases: 1000, unfinished: 1 / 3 },
  { name: '5 groups of 4', sizes: [4, 4, 4, 4, 4], cases: 1000 },
  { name: '50, 100 and 200, three causes', sizes: [50, 100, 200], cases: 300, causes: 3 },
  { name: '20 and 20, read every 20 s', sizes: [20, 20], cases: 300, spacing: 20 },
  { name: '4 and 20, read every 20 s', sizes: [4, 20], cases: 300, spacing: 20 },
];

/** The chance up to which groups are said to differ. Source: the sentence of the fleet review. */
const tellingChance = 0.05;

/** Fewer deals than the program takes: as exact, and only the least chance that can be said is greater. */
const limits = { ...defaultFleetLimits, dealing: { ...defaultFleetLimits.dealing, rounds: 399 } };

/** Groups whose sync times are alike, called different. */
export const groupComparisonStudy: Study = {
  name: 'log-rank: groups alike, called different',
  run: (random, scale) =>
    settings.map((setting): Trial => {
      const cases = Math.ceil(setting.cases * scale);
      return {
        setting: setting.name,
        promised: { low: 0, high: tellingChance },
        hits: countHits(
          cases,
          () => (compareGroups(madeTimes(random, setting), limits)?.p ?? 1) <= tellingChance,
        ),
        cases,
      };
    }),
};

const allCauses: readonly BringUpCause[] = ['reflash', 'inserted', 'restart'];

function madeTimes(
  random: Random,
  { sizes, causes = 1, unfinished = 0, spacing = 0 }: Setting,
): readonly SyncTime[] {
  return sizes.flatMap((size, group) =>
    Array.from({ length: size }, (_, index): SyncTime => {
      const of = index % causes;
      const seconds = timeShapes['skewed times'](random) + 40 * of;
      const phase = spacing * random();
      const low = spacing === 0 ? seconds : Math.max(0, seconds - phase);
      const isSeen = random() >= unfinished;
      const high = isSeen ? low + spacing : Number.POSITIVE_INFINITY;
      const watched = isSeen ? low : low * random();
      return { group: `6.${group}`, cause: allCauses[of] ?? 'reflash', start: madeFrom, low: watched, high };
    }),
  );
}
