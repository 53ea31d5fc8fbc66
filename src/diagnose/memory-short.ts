import { medianOffset } from '../statistics/median-offset.ts';
import { endLines } from '../timeline/evidence.ts';
import type { PairTimeline } from '../vocabulary.ts';
import { type Cause, doubted, type Trouble } from './cause.ts';
import { gaugeMedian } from './gauge-median.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

export const memoryShort: Cause = {
  meta: {
    id: 'memory-short',
    title: 'The standby is short of memory',
    kind: 'condition',
    explains: 'A standby that has no room for what the active half copies to it.',
    shows: 'Its free memory is under a tenth of what its peers have while attempts fail.',
    needs: [['free-memory']],
    next: 'Compare the memory fitted and the memory used with a half that works; if the project has grown past the module, a qualified person must decide what to take out.',
  },
  weigh(trouble) {
    const peers = peersOf(trouble);
    if (peers === null) return doubted([]);
    return weighState(trouble, {
      priorDecibans: trouble.limits.hinderingDecibans,
      words: 'so little memory',
      test: (observation) => readMemory(observation, peers, trouble),
    });
  },
};

/** Median free memory of every other half of the files, in bytes; `null` if none was read. */
function peersOf({ fleet, facts, half }: Trouble): number | null {
  const medians = fleet.flatMap(({ timeline }) =>
    timeline.halves
      .filter((h) => timeline !== facts.timeline || h !== half)
      .flatMap((h) => wholeMedian(timeline, h) ?? []),
  );
  return medianOffset(medians)?.median ?? null;
}

function wholeMedian(timeline: PairTimeline, half: string): number | null {
  return gaugeMedian(timeline, half, 'free-memory', timeline.from, timeline.to);
}

function readMemory(
  { facts: { timeline }, half, from, to }: Observation,
  peers: number,
  { limits }: Trouble,
): Seen | null {
  const median = half === null ? null : gaugeMedian(timeline, half, 'free-memory', from, to);
  if (median === null) return null;
  return {
    holds: median < peers * limits.memoryShare,
    statement: `Half ${half} had a median of ${kilobytes(median)} of free memory, its peers ${kilobytes(peers)}.`,
    evidence: endLines(timeline),
  };
}

function kilobytes(bytes: number): string {
  return `${Math.round(bytes / 1024)} KiB`;
}
