import { atLeastOf } from '../statistics/poisson-binomial.ts';
import { shareAround } from '../timeline/coverage.ts';
import { between } from '../timeline/durations.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { groupBy } from '../timeline/groups.ts';
import { countUntil, countWhile, stepAt } from '../timeline/tracks.ts';
import {
  type Finding,
  type Interval,
  type NonEmpty,
  sayDuration,
  type TimelineEvent,
} from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';
import { askIf } from './ask-if.ts';
import { isComparedChange, kindOfChange, sayChange } from './change-words.ts';
import type { CoincidenceLimits, Limits } from './limits.ts';

/** Which other changes come before the losses of the ready partner more often than chance brings them there. */
export const coincidence: Analyzer = {
  meta: {
    id: 'coincidence',
    question: 'Do other changes precede the losses more often than chance?',
    needs: ['partner-ready'],
    findings: ['coincidence'],
  },
  analyze(facts, limits) {
    const counted = facts.losses.filter((l) => l.kind === 'counted').map((l) => l.event);
    // Where the bounds of a loss are wider than the window, nothing is sure to lie within it before the loss.
    const judged = counted.filter((e) => between(e, e).high * 1000 <= limits.coincidence.windowMs);
    const leads = leadsOf(facts, judged, limits);
    const kinds = [...groupBy(changesIn(facts, leads), ({ change }) => kindOfChange(change)).entries()];
    const comparisons = kinds.map(([kind, found]) => compare(kind, found, limits.coincidence));
    return {
      checked: judged.length,
      notObserved: counted.length - judged.length,
      findings: [],
      questions: comparisons
        .filter((c) => couldHold(c, limits))
        .map((c) =>
          askIf(
            c.preceded.length < limits.coincidence.leastCount ? 1 : atLeastOf(c.chances, c.preceded.length),
            limits,
            () => toFinding(facts, judged, c, limits.coincidence),
          ),
        ),
    };
  },
};

/** The minutes just before a loss in which a change may have brought it; in milliseconds UTC. */
interface Lead extends Interval {
  readonly loss: TimelineEvent;
}

/**
 * The lead of each loss, as far as the pair was observed and ready in it, and had been for a moment, so that neither the loss
 * before nor the return from it explains what changes. No two leads overlap: what one loss brings, or the same change before
 * several losses, counts once.
 */
function leadsOf(
  { timeline, readiness }: PairFacts,
  losses: readonly TimelineEvent[],
  { coincidence: { leadMs }, rules }: Limits,
): readonly Lead[] {
  return losses.map((loss) => {
    const ready = stepAt(readiness.steps, loss.time, 'before');
    const since = ready === undefined || ready.initial ? timeline.from : ready.time + rules.belongsMs;
    const hidden = timeline.unobserved[countWhile(timeline.unobserved, (u) => u.from < loss.earliest) - 1];
    const from = Math.max(loss.earliest - leadMs, since, hidden?.to ?? timeline.from);
    return { loss, from: Math.min(from, loss.earliest), to: loss.earliest };
  });
}

/** A change in the lead of a loss. */
interface Found {
  readonly change: TimelineEvent;
  readonly lead: Lead;
}

/** The changes in each lead; no first states. */
function changesIn({ timeline }: PairFacts, leads: readonly Lead[]): readonly Found[] {
  const changes = timeline.events.filter((e) => !e.initial && isComparedChange(e));
  return leads.flatMap((lead) =>
    changes
      .slice(countUntil(changes, lead.from, 'before'), countUntil(changes, lead.loss.time, 'before'))
      .filter((change) => change.earliest >= lead.from && change.earliest < lead.to)
      .map((change) => ({ change, lead })),
  );
}

interface Comparison {
  readonly kind: string;
  /** Each loss that was preceded, with the last change before it. */
  readonly preceded: readonly Preceded[];
  /** Of each loss with such a change in its lead, the chance that one of them would precede it. */
  readonly chances: readonly number[];
}

interface Preceded {
  readonly change: TimelineEvent;
  readonly loss: TimelineEvent;
}

/**
 * Were the changes of a lead shifted together around the lead, by any time alike, one of them would precede the loss in the
 * share of the lead that their windows cover. So each loss is compared with its own minutes: where changes and losses come in
 * storms, that both are many says nothing. Counts only what is sure to precede, and lets each change cast its widest window:
 * both are on the side of chance. Sources: Maclure, The Case-Crossover Design, American Journal of Epidemiology 133 (1991);
 * Amarasingham, Harrison, Hatsopoulos and Geman, Conditional Modeling and the Jitter Method of Spike Resampling, Journal of
 * Neurophysiology 107 (2012), both from memory.
 */
function compare(kind: string, found: readonly Found[], limits: CoincidenceLimits): Comparison {
  const byLead = [...groupBy(found, ({ lead }) => String(lead.loss.time)).values()];
  return {
    kind,
    preceded: byLead.flatMap((own) => {
      const last = own.findLast(({ change, lead }) => surelyPrecedes(change, lead.loss, limits.windowMs));
      return last === undefined ? [] : [{ change: last.change, loss: last.lead.loss }];
    }),
    chances: byLead.map((own) => shareCovered(own, limits)),
  };
}

/**
 * How much of a lead the windows of its changes cover; where several lie late in it, of its late part if that is more: a storm may
 * have just begun.
 */
function shareCovered(found: readonly Found[], { windowMs, lateMs }: CoincidenceLimits): number {
  const [first] = found;
  if (first === undefined) return 0;
  const { from, to } = first.lead;
  const late = { from: Math.max(from, to - lateMs), to };
  const lateOnes = found.filter(({ change }) => change.earliest >= late.from);
  const windowsOf = (some: readonly Found[]): readonly Interval[] =>
    some.map(({ change: { earliest, time, resolution } }) => ({
      from: earliest,
      to: time + resolution + windowMs,
    }));
  const whole = shareAround(first.lead, windowsOf(found));
  return lateOnes.length > 1 ? Math.max(whole, shareAround(late, windowsOf(lateOnes))) : whole;
}

/** Certainly before the loss, and certainly not longer before it than the window, no matter what the bounds hide. */
function surelyPrecedes(change: TimelineEvent, loss: TimelineEvent, windowMs: number): boolean {
  const before = change.time < loss.time && change.time + change.resolution <= loss.earliest;
  return before && between(change, loss).high * 1000 <= windowMs;
}

/** Whether the question is one: if every loss had been preceded, that would be more than chance. */
function couldHold({ chances }: Comparison, { coincidence: { leastCount }, significance }: Limits): boolean {
  const all = chances.reduce((product, chance) => product * chance, 1);
  return chances.length >= leastCount && all <= significance;
}

function toFinding(
  { timeline }: PairFacts,
  losses: readonly TimelineEvent[],
  { kind, preceded, chances }: Comparison,
  { windowMs }: CoincidenceLimits,
): Finding {
  const halves = new Set(preceded.map(({ change }) => change.half));
  const half = halves.size === 1 ? (preceded[0]?.change.half ?? null) : null;
  const what = sayChange(kind, half);
  const [first, ...rest] = preceded.flatMap(({ change, loss }) => [change, loss]);
  if (first === undefined) throw new RangeError(`No loss was preceded by ${kind}.`);
  const events: NonEmpty<TimelineEvent> = [first, ...rest];
  const expected = chances.reduce((sum, chance) => sum + chance, 0);
  const chance = expected < 0.01 ? 'fewer than 0.01' : String(Number(expected.toPrecision(2)));
  return {
    id: 'coincidence',
    severity: 'warning',
    pair: timeline.pair,
    half,
    from: first.time,
    to: rest.at(-1)?.time ?? first.time,
    statement: `${preceded.length} of ${losses.length} losses came within ${sayDuration(windowMs / 1000)} after ${what}; by chance ${chance} would (`,
    figures: { change: kind, count: preceded.length, losses: losses.length, expected },
    evidence: linesOfAll(events),
  };
}
