import { medianOffset } from '../statistics/median-offset.ts';
import { type Attempt, type ReferenceBand, type StageTime, stages } from '../vocabulary.ts';

/**
 * How long attempts that became ready stayed in each stage, in the order of the ladder; a stage that none was seen to
 * leave is left out.
 */
export function referenceBands(attempts: readonly Attempt[]): readonly ReferenceBand[] {
  const times = attempts.filter((a) => a.outcome === 'ready').flatMap((a) => a.stages);
  return stages.flatMap((stage) => {
    const seconds = times.flatMap((t) => (t.stage === stage ? secondsIn(t) : []));
    const middle = medianOffset(seconds);
    if (middle === null) return [];
    const [shortest, longest] = [Math.min(...seconds), Math.max(...seconds)];
    return [{ stage, count: seconds.length, shortest, median: middle.median, longest }];
  });
}

function secondsIn({ inStage }: StageTime): readonly number[] {
  return inStage.censored || inStage.seconds === null ? [] : [inStage.seconds];
}
