import type { PairFacts } from '../timeline/facts.ts';
import { referenceBands } from '../timeline/reference-bands.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { staffOf } from '../timeline/staff.ts';
import { stageAt } from '../timeline/stages.ts';
import { standbyAt } from '../timeline/standby.ts';
import type { Attempt, Diagnosis, Stage } from '../vocabulary.ts';
import type { Cause, Trouble } from './cause.ts';
import type { Candidate } from './choose-pair.ts';
import type { DiagnoseLimits } from './limits.ts';
import { rankCauses } from './rank-causes.ts';
import { sayAnswer, sayHealthy } from './say-answer.ts';
import { standingOf } from './standing.ts';
import type { Fleet } from './trouble.ts';

/** What one pair comes to, without what the files and the analyzers say. Source: design.md, section 6. */
export type PairDiagnosis = Omit<Diagnosis, 'inputs' | 'chosen' | 'findings'>;

/** Diagnoses one pair: why it has no ready partner, or that nothing is wrong. */
export function diagnosePair(
  { facts, trouble }: Candidate,
  fleet: Fleet,
  causes: readonly Cause[],
  limits: DiagnoseLimits,
  rules: TimelineRules,
  isPartial: boolean,
): PairDiagnosis {
  const { timeline, bringUps } = facts;
  const half = trouble === null ? standbyAt(timeline, timeline.to) : trouble.half;
  const from = trouble?.from ?? bringUps.at(-1)?.start.time ?? timeline.from;
  const attempts = trouble?.attempts ?? [];
  const own = fleet.attempts.filter((a) => a.pair === timeline.pair);
  const stage = stageNow(facts, trouble, half);
  const reference = referenceOf(fleet, attempts.at(-1) ?? null, limits);
  const ranking = trouble === null ? { causes: [], doubted: [], unjudged: [] } : rankCauses(causes, trouble);
  return {
    pair: timeline.pair,
    site: timeline.site,
    healthy: trouble === null,
    half,
    from,
    to: timeline.to,
    sentences:
      trouble === null
        ? sayHealthy(facts, own, half, rules.holdMs, isPartial)
        : sayAnswer(trouble, stage, reference.bands, ranking.causes, limits.leadDecibans),
    stage,
    bringUps,
    attempts,
    reference,
    ...ranking,
    staff: staffOf(facts, leadIn(facts, from), timeline.to, rules),
  };
}

/** The furthest stage of the last attempt; without one, and for a healthy pair, the stage it is in now. */
function stageNow(facts: PairFacts, trouble: Trouble | null, half: string | null): Stage | null {
  const { timeline } = facts;
  const last = trouble?.attempts.at(-1)?.stages.at(-1);
  if (last !== undefined) return last.stage;
  const begun = standingOf(facts).endedBy?.time;
  return stageAt(timeline, half, timeline.to, false, begun);
}

/** Attempts that worked: those of the same model and firmware if there are enough, else all. */
function referenceOf(
  fleet: Fleet,
  last: Attempt | null,
  { referenceCount }: DiagnoseLimits,
): Diagnosis['reference'] {
  const worked = fleet.attempts.filter((a) => a.outcome === 'ready' && a.cause !== 'loss');
  const same = worked.filter(
    (a) => last !== null && a.model === last.model && a.firmware !== null && a.firmware === last.firmware,
  );
  return same.length >= referenceCount
    ? { sameModule: true, bands: referenceBands(same) }
    : { sameModule: false, bands: referenceBands(worked) };
}

/** The staff begins a tenth of its length before the trouble, so that one sees what was before. */
function leadIn({ timeline }: PairFacts, from: number): number {
  return Math.max(timeline.from, Math.round(from - (timeline.to - from) / 9));
}
