import {
  type Attempt,
  type Diagnosis,
  type ReferenceBand,
  type Stage,
  type StageTime,
  sayAbout,
  sayBounds,
  sayDuration,
  stages,
} from '../vocabulary.ts';
import { sayMeasure } from './words.ts';

/** One rung of the ladder of stages, in words. */
export interface Rung {
  readonly stage: Stage;
  /** Time of the last attempt in it; empty if it was not reached. */
  readonly last: string;
  /** How many attempts of the trouble ended here. */
  readonly ended: number;
  /** What attempts that worked needed here; empty if none was seen. */
  readonly reference: string;
}

/** The ladder from the lowest stage up: the last attempt against the reference band, and where attempts ended. */
export function ladderOf({ attempts, reference }: Diagnosis): readonly Rung[] {
  const last = attempts.at(-1);
  return stages.map((stage) => {
    const reached = last?.stages.find((s) => s.stage === stage);
    const band = reference.bands.find((b) => b.stage === stage);
    return {
      stage,
      last: reached === undefined || last === undefined ? '' : sayStay(reached, last),
      ended: attempts.filter((a) => endOf(a) === stage).length,
      reference: band === undefined ? '' : sayBand(band),
    };
  });
}

/** How long the last attempt was in a stage; the last stage of one that failed ended with that. */
function sayStay({ inStage }: StageTime, last: Attempt): string {
  const { seconds, low, high, censored } = inStage;
  if (!censored || seconds === null || low === null) return sayMeasure(inStage);
  if (last.outcome !== 'failed') return low < 0.05 ? 'just reached' : sayMeasure(inStage);
  if (last.abort === null) return 'sync failed, no start logged';
  return `${sayAbout({ seconds, low, high: high ?? seconds })}, then failed`;
}

function sayBand({ count, shortest, median, longest }: ReferenceBand): string {
  if (count === 1) return `${sayDuration(median)}, once`;
  return `${sayBounds(shortest, longest)}, median ${sayDuration(median)}, ${count} times`;
}

/** Whom the reference band rests on, in one sentence. */
export function sayReference({ reference }: Diagnosis): string {
  if (reference.bands.length === 0)
    return 'No attempt with a logged start became ready, so there is nothing to compare with.';
  return reference.sameModule
    ? 'Compared with successful attempts of the same model and firmware.'
    : 'Compared with all successful attempts in the files: too few had the same model and firmware.';
}

function endOf({ stages: reached }: Attempt): Stage | null {
  return reached.at(-1)?.stage ?? null;
}
