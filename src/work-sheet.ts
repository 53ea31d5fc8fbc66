import { fitFor, reasonsAgainstSwap, standingOf } from './fleet/readiness.ts';
import type { Limits } from './limits.ts';
import { exposureOf, unnamed, withBlank } from './sheet-steps.ts';
import { clip } from './timeline/coverage.ts';
import { exactly } from './timeline/durations.ts';
import { endLines, linesOf } from './timeline/evidence.ts';
import type { PairFacts } from './timeline/facts.ts';
import { activeCount, standbyTold } from './timeline/standby-told.ts';
import { stepAt, track } from './timeline/tracks.ts';
import type {
  Finding,
  FitnessReason,
  Instant,
  PairTimeline,
  PlannedModule,
  SheetHalf,
  SheetReadiness,
  StandbyAsOf,
  StateSignal,
  Told,
  WorkSheet,
  WorkStep,
} from './vocabulary.ts';

/** What a work sheet is asked for with. */
export interface PrepareQuestion {
  /** The computer's clock, in milliseconds UTC. */
  readonly now: number;
  /** A standby half is named from lines that are older than a day, too. */
  readonly allowOld: boolean;
}

/** What a work sheet says of the pair itself, by its half of the plan. */
export type PairSheet = Omit<WorkSheet, 'inputs' | 'job' | 'findings' | 'trouble'>;

/** The work sheet of one pair: how it stands as of its last line, and what the work will ask of it. */
export function sheetOf(
  facts: PairFacts,
  plan: Readonly<Record<string, PlannedModule>>,
  steps: readonly WorkStep[],
  limits: Limits,
  question: PrepareQuestion,
): PairSheet {
  const { timeline } = facts;
  const standby = standbyAsOf(timeline, limits, question);
  const isOld = standby.because === 'too-old' || standby.because === 'ahead';
  return {
    pair: timeline.pair,
    site: timeline.site,
    madeAt: question.now,
    asOf: instant(timeline.to),
    standby,
    halves: timeline.halves.map((half) => halfOf(timeline, half, plan, isOld)),
    readiness: readinessOf(facts, limits, question),
    exposure: isOld ? alike(exposureOf(steps)) : exposureOf(steps),
    steps: steps.map((step) => (isOld ? unnamed(step, standby.evidence) : withBlank(step))),
    losses: lossesBefore(facts, limits),
    troubleDays: daysBefore(timeline, limits),
  };
}

function standbyAsOf(
  timeline: PairTimeline,
  { prepare }: Limits,
  { now, allowOld }: PrepareQuestion,
): StandbyAsOf {
  const told = standbyTold(timeline);
  const ageMs = now - told.seenAt;
  const age = { seenAt: instant(told.seenAt), ageSeconds: ageMs / 1000 };
  const because = ageMs > prepare.freshMs ? 'too-old' : ageMs < -prepare.aheadMs ? 'ahead' : null;
  if (because === null || allowOld || told.because === 'not-logged') return { ...told, ...age };
  const lines = endLines(timeline);
  return { ...age, half: null, because, restsOn: null, evidence: [lines.at(-1) ?? lines[0]] };
}

/** Whether fit, by the lines; of lines older than a day it is not known any more, unless old lines are asked for. */
function readinessOf(
  facts: PairFacts,
  { rules, fleet, prepare }: Limits,
  { now, allowOld }: PrepareQuestion,
): SheetReadiness {
  const { timeline } = facts;
  const ageMs = now - timeline.to;
  const old: readonly FitnessReason[] =
    allowOld || (ageMs <= prepare.freshMs && ageMs >= -prepare.aheadMs)
      ? []
      : [
          {
            said:
              ageMs > 0
                ? 'Its newest line is older than a day: what it says may no longer be so.'
                : "Its newest line lies ahead of this computer's clock.",
            isUnknown: true,
            lines: endLines(timeline),
          },
        ];
  const standing = standingOf(facts, rules);
  const reasons = [...rolesAtOdds(timeline), ...reasonsAgainstSwap(standing, fleet.readyMs), ...old];
  return {
    fit: fitFor(reasons),
    reasons: reasons.map((r) => ({ statement: r.said, evidence: r.lines })),
    evidence: reasons.length === 0 ? standing.fitness.ready : reasons.flatMap((r) => r.lines),
  };
}

function rolesAtOdds(timeline: PairTimeline): readonly FitnessReason[] {
  const { count, evidence: lines } = activeCount(timeline);
  if (count === null || count === 1) return [];
  return [{ said: count === 0 ? 'Neither half is active.' : 'Both halves are active.', lines }];
}

function halfOf(
  timeline: PairTimeline,
  half: string,
  plan: Readonly<Record<string, PlannedModule>>,
  isOld: boolean,
): SheetHalf {
  const told = (signal: StateSignal, of = half): Told => toldAt(timeline, of, signal);
  const other = timeline.halves.find((h) => h !== half);
  const planned = plan[half];
  const firmware = planned?.firmware ?? (other === undefined ? null : told('firmware', other).value);
  const from = planned?.firmware !== undefined ? 'plan' : firmware === null ? null : 'other-half';
  return {
    half,
    role: isOld ? nothing : told('role'),
    light: isOld ? nothing : told('light'),
    model: told('model'),
    serial: told('serial'),
    firmware: told('firmware'),
    wanted: { firmware, from, model: planned?.model ?? null },
  };
}

const nothing: Told = { value: null, isConcluded: false, evidence: [] };

function toldAt(timeline: PairTimeline, half: string, signal: StateSignal): Told {
  const step = stepAt(track(timeline, half, signal), timeline.to);
  if (step === undefined) return nothing;
  return { value: step.value, isConcluded: step.concluded, evidence: linesOf(step) };
}

/** The exposures without the halves, each once. */
function alike(exposure: WorkSheet['exposure']): WorkSheet['exposure'] {
  const unlike = exposure.map((one) => ({ ...one, half: null }));
  return [...new Map(unlike.map((one) => [JSON.stringify(one), one])).values()];
}

/** The findings of a pair, warning or worse, that reach into the days before its last line; in the order given. */
export function troubleBefore(
  findings: readonly Finding[],
  { pair, to }: Pick<PairTimeline, 'pair' | 'to'>,
  { prepare }: Limits,
): readonly Finding[] {
  const since = to - prepare.troubleMs;
  return findings.filter(
    (f) => f.pair === pair && f.severity !== 'info' && (f.to ?? to) >= since && (f.from ?? to) <= to,
  );
}

function lossesBefore({ losses, timeline }: PairFacts, { prepare }: Limits): WorkSheet['losses'] {
  const since = timeline.to - prepare.troubleMs;
  return losses
    .filter(({ kind, event }) => kind === 'counted' && event.time >= since)
    .map(({ event }) => ({ time: event.time, earliest: event.earliest, evidence: linesOf(event) }))
    .reverse();
}

const dayMs = 86_400_000;

function daysBefore({ observed, to }: PairTimeline, { prepare }: Limits): WorkSheet['troubleDays'] {
  const spans = clip(observed, to - prepare.troubleMs, to);
  const covered = spans.reduce((sum, s) => sum + s.to - s.from, 0);
  return { asked: prepare.troubleMs / dayMs, covered: covered / dayMs };
}

function instant(time: number): Instant {
  const { earliest } = exactly(time);
  return { time, earliest };
}
