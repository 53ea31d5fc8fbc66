import { platform } from '../../../src/cli/platform.ts';
import type { FilesOptions } from '../../../src/import/import-files.ts';
import {
  type Analysed,
  analyse,
  followedReadings,
  importFiles,
  readPhrasebook,
  swapsNow,
} from '../../../src/pipeline.ts';
import type { SwapNow } from '../../../src/vocabulary.ts';
import type { Dressed } from '../stories/dressing.ts';
import { dress } from '../stories/dressings.ts';
import { swapStory, type ToldSwap } from '../stories/swap-story.ts';
import { verifyFiles } from '../verify-files.ts';
import { judgeStep, type StepMiss, stepMissKinds } from './judge-step.ts';
import { writtenFiles } from './written-files.ts';

/** What came of the replay of many swaps. */
export interface ReplayTally {
  readonly swaps: number;
  /** Steps at which a pair was told of. */
  steps: number;
  /** Steps by hold point and how it stood, then swaps by what was put in. */
  readonly holdPoints: Map<string, number>;
  readonly kinds: Map<string, number>;
  /** Misses by kind and what they are about, with the seed and step of the first ones. */
  readonly misses: Map<string, string[]>;
}

/** Replays the swaps of so many seeds, each cut at so many instants, and compares every step with the truth. */
export async function countReplays(swaps: number, first: number, steps: number): Promise<ReplayTally> {
  return replayAll(
    Array.from({ length: swaps }, (_, index) => swapStory(first + index)),
    steps,
  );
}

/** Replays some swaps, each in the dressing of its seed or in the one that is named. */
export async function replayAll(
  swaps: readonly ToldSwap[],
  steps: number,
  dressing?: string,
): Promise<ReplayTally> {
  const tally: ReplayTally = {
    swaps: swaps.length,
    steps: 0,
    holdPoints: new Map(),
    kinds: new Map(),
    misses: new Map(),
  };
  for (const told of swaps) await replaySwap(tally, told, dress(told.story, told.seed, dressing), steps);
  return tally;
}

async function replaySwap(
  tally: ReplayTally,
  told: ToldSwap,
  dressed: Dressed,
  steps: number,
): Promise<void> {
  const { story, seed } = told;
  const written = writtenFiles(dressed);
  const options = optionsOf(dressed.phrasebook);
  add(tally.kinds, told.fault?.id ?? 'good');
  let now: SwapNow | undefined;
  for (let step = 1; step <= steps; step += 1) {
    const time = story.from + Math.floor(((story.to - story.from + afterEndMs) * step) / steps);
    const { sources, hasMore } = written.at(time);
    if (!hasMore) continue;
    now = nowIn(analyse(await importFiles(sources, options)), story.pair);
    if (now === undefined) continue;
    tally.steps += 1;
    add(tally.holdPoints, `${now.holdPoint.id} ${now.holdPoint.status}`);
    for (const miss of judgeStep(told, dressed, now, time))
      addMiss(tally, miss, `${seed}@${step} (${dressed.id})`);
  }
  const end = (await verifyFiles(dressed.files, dressed.phrasebook)).swaps.at(-1);
  if (JSON.stringify(end ?? null) !== JSON.stringify(now?.swap ?? null))
    addMiss(tally, { kind: 'end differs from verify', about: dressed.id }, String(seed));
}

/** Field notes are written a minute later. */
const afterEndMs = 120_000;

/** Files are read once, and from then on what is new of them: as they are while they are followed. */
function optionsOf(phrasebook: string | null): FilesOptions {
  return {
    phrasebook: readPhrasebook('phrasebook.yaml', phrasebook),
    zone: null,
    order: null,
    year: null,
    sha256: platform.sha256,
    isGeneralOnly: false,
    kept: followedReadings(),
  };
}

function nowIn(analysed: Analysed, pair: string): SwapNow | undefined {
  const isTold = analysed.facts.some((f) => f.timeline.pair === pair);
  return isTold ? swapsNow(analysed, pair, null)[0] : undefined;
}

function add(counts: Map<string, number>, key: string): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

function addMiss({ misses }: ReplayTally, { kind, about }: StepMiss, where: string): void {
  const key = `${kind}: ${about}`;
  misses.set(key, [...(misses.get(key) ?? []), where]);
}

/** `npm run replay -- 200 0 500`: so many swaps, from a seed on, each in so many steps. */
export async function runReplay(count = '20', first = '0', steps = '60'): Promise<string> {
  const begin = performance.now();
  const tally = await countReplays(Number(count), Number(first), Number(steps));
  const seconds = (performance.now() - begin) / 1000;
  return `${count} swaps from seed ${first} in ${steps} steps each: ${tally.steps} steps in ${seconds.toFixed(0)} s\n\n${replayText(tally)}`;
}

const mostShown = 4;

function replayText({ holdPoints, kinds, misses }: ReplayTally): string {
  const rows = (counts: ReadonlyMap<string, number>): readonly string[] =>
    [...counts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, count]) => `  ${key}: ${count}`);
  const ofKind = (kind: string): readonly string[] =>
    [...misses]
      .filter(([key]) => key.startsWith(`${kind}:`))
      .sort(([, a], [, b]) => b.length - a.length)
      .map(
        ([key, where]) =>
          `    ${key.slice(kind.length + 2)}: ${where.length}, ${where.slice(0, mostShown).join(', ')}`,
      );
  return [
    'Swaps by what was put in',
    ...rows(kinds),
    'Steps by hold point',
    ...rows(holdPoints),
    'Misses',
    ...stepMissKinds.flatMap((kind) => {
      const found = ofKind(kind);
      const total = [...misses]
        .filter(([key]) => key.startsWith(`${kind}:`))
        .reduce((sum, [, w]) => sum + w.length, 0);
      return [`  ${kind}: ${total}`, ...found];
    }),
  ].join('\n');
}
