import { medianOffset } from '../statistics/median-offset.ts';
import { endLines } from '../timeline/evidence.ts';
import { type Cause, doubted, type Trouble } from './cause.ts';
import { gaugeMedian } from './gauge-median.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: one attempt that failed while the median free memory of a half, over the
 * attempt, was under a tenth of that of the other halves of the files, and one partner that was ready with more. Both halves of
 * one pair may be short: only other pairs show that. Common practice, no source.
 */
export const memoryShort: Cause = {
  meta: {
    id: 'memory-short',
    title: 'A half is short of memory',
    kind: 'condition',
    explains:
      'A half that has no room for the copy: the standby for what it gets, the active one for what it sends.',
    shows: 'The free memory of either half is under a tenth of what its peers have while attempts fail.',
    needs: [['free-memory']],
    next: 'Compare the memory fitted and the memory used with a half that works; if the project has grown past the module, a qualified person must decide what to take out.',
  },
  weigh: (trouble) => {
    const peers = peersOf(trouble);
    if (peers.size === 0) return doubted([]);
    return weighState(trouble, {
      priorDecibans: trouble.limits.hinderingDecibans,
      words: 'so little memory',
      test: (observation) => readMemory(observation, peers, trouble),
    });
  },
};

/** For each half of the pair the median free memory of every other half of the files, in bytes; none where none was read. */
function peersOf({ fleet, facts }: Trouble): ReadonlyMap<string, number> {
  const all = fleet.flatMap(({ timeline }) =>
    timeline.halves.flatMap((half) => {
      const median = gaugeMedian(timeline, half, 'free-memory', timeline.from, timeline.to);
      return median === null ? [] : [{ timeline, half, median }];
    }),
  );
  return new Map(
    facts.timeline.halves.flatMap((half) => {
      const others = all.filter((m) => m.timeline !== facts.timeline || m.half !== half);
      const median = medianOffset(others.map((m) => m.median))?.median;
      return median === undefined ? [] : [[half, median] as const];
    }),
  );
}

/** Of the two halves the one that is short; else the one that is to come up. Of another pair, both against the peers of ours. */
function readMemory(
  observation: Observation,
  peers: ReadonlyMap<string, number>,
  { facts, limits }: Trouble,
): Seen | null {
  const {
    facts: { timeline },
    half: own,
    from,
    to,
    ready,
    at,
  } = observation;
  const isOwn = timeline === facts.timeline;
  const rest = medianOffset([...peers.values()])?.median ?? 0;
  const read = timeline.halves
    .toSorted((a, b) => Number(b === own) - Number(a === own))
    .flatMap((half) => {
      // What matters of a ready partner is how it was when it synchronised.
      const median = gaugeMedian(timeline, half, 'free-memory', from, ready ? at : to);
      const others = isOwn ? peers.get(half) : rest;
      if (median === null || others === undefined) return [];
      return [{ half, median, others, holds: median < others * limits.memoryShare }];
    });
  const shown = read.find((r) => r.holds) ?? read[0];
  if (shown === undefined) return null;
  return {
    holds: shown.holds,
    statement: `Half ${shown.half} had a median of ${kilobytes(shown.median)} of free memory, its peers ${kilobytes(shown.others)}.`,
    evidence: endLines(timeline),
  };
}

function kilobytes(bytes: number): string {
  return `${Math.round(bytes / 1024)} KiB`;
}
