import type { Job, PairTimeline } from '../vocabulary.ts';

/** A place in a job file that does not fit the logs. */
export interface PlanMisfit {
  readonly where: string;
  readonly what: string;
  readonly fix: string;
}

/** The first pair or half of a plan that no log speaks of; `null` where there is none. */
export function planMisfit(timelines: readonly PairTimeline[], job: Job | null): PlanMisfit | null {
  const file = job?.file ?? 'the job';
  for (const [pair, halves] of Object.entries(job?.plan ?? {})) {
    const known = timelines.find((t) => t.pair === pair);
    if (known === undefined) {
      const fix = `The files name ${timelines.map((t) => t.pair).join(', ')}.`;
      return { where: `${file}: plan.${pair}`, what: 'no file names that pair.', fix };
    }
    const half = Object.keys(halves).find((name) => !known.halves.includes(name));
    if (half !== undefined) {
      const fix = `The halves of ${pair} are ${known.halves.join(' and ')}.`;
      return { where: `${file}: plan.${pair}.${half}`, what: 'no file names that half.', fix };
    }
  }
  return null;
}
