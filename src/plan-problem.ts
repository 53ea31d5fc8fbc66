import { InputError } from './import/bytes/input-error.ts';
import { planMisfit } from './verify/plan-misfit.ts';
import type { Job, PairTimeline } from './vocabulary.ts';

/** Why the plan of a job does not fit the logs: it names a pair or a half that they do not know. `null` where it fits. */
export function planProblem(
  { timelines }: { readonly timelines: readonly PairTimeline[] },
  job: Job | null,
): InputError | null {
  const misfit = planMisfit(timelines, job);
  return misfit === null ? null : new InputError(misfit.where, misfit.what, misfit.fix);
}
