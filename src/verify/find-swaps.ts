import { openSwap } from '../procedure/open-swap.ts';
import { withBlanks, worksOf } from '../procedure/works.ts';
import { eventWith } from '../timeline/event-with.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { flappingSpells } from '../timeline/flapping.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import type { BringUp, Job, NonEmpty, PlannedModule } from '../vocabulary.ts';
import type { SwapCase } from './check.ts';
import type { VerifyLimits } from './limits.ts';

/** Which swaps are wanted; `null` leaves it open. Instants are milliseconds UTC. */
export interface SwapFilter {
  readonly from: number | null;
  readonly to: number | null;
}

/**
 * The swaps of a pair, in the order of time: module changes of both halves within a day are one. The end is the
 * earliest of the last settled bring-up plus the soak time, the end of the log and the filter's end.
 * Source: design.md, section 5.
 */
export function findSwaps(
  facts: PairFacts,
  filter: SwapFilter,
  job: Job | null,
  limits: VerifyLimits,
  rules: TimelineRules,
): readonly SwapCase[] {
  const plan = job?.plan?.[facts.timeline.pair] ?? {};
  const changes = [...facts.moduleChanges, ...plannedChanges(facts, plan)].sort(
    (a, b) => a.removed.time - b.removed.time,
  );
  const wanted = changes.filter(
    (c) =>
      (filter.from === null || (c.inserted ?? c.removed).time >= filter.from) &&
      (filter.to === null || c.removed.earliest <= filter.to),
  );
  const groups = groupChanges(wanted, limits);
  return groups.map((group, index) => {
    const next = groups[index + 1]?.[0].removed.earliest ?? Number.POSITIVE_INFINITY;
    const logEnd = Math.min(facts.timeline.to, filter.to ?? Number.POSITIVE_INFINITY, next);
    return toCase(facts, group, { logEnd, isLast: next > facts.timeline.to }, plan, limits, rules);
  });
}

type Plan = Readonly<Record<string, PlannedModule>>;

/** An absence of the partner is a swap where the plan names the one half that was out, and nothing else tells of one. */
function plannedChanges({ absences, moduleChanges }: PairFacts, plan: Plan): readonly ModuleChange[] {
  const [half, ...others] = Object.keys(plan);
  if (half === undefined || others.length > 0 || moduleChanges.some((c) => c.half === half)) return [];
  const nothing = { model: null, serial: null, firmware: null };
  return absences.map(({ gone, back }) => ({
    half,
    removed: eventWith(gone, { half, signal: 'removed', value: null }),
    inserted: back === null ? null : eventWith(back, { half, signal: 'inserted', value: null }),
    before: nothing,
    found: nothing,
  }));
}

function groupChanges(
  changes: readonly ModuleChange[],
  limits: VerifyLimits,
): readonly NonEmpty<ModuleChange>[] {
  const groups: [ModuleChange, ...ModuleChange[]][] = [];
  for (const change of changes) {
    const group = groups.at(-1);
    const isSame =
      group !== undefined && change.removed.time - group[0].removed.time <= limits.sameSwapSeconds * 1000;
    if (isSame) group.push(change);
    else groups.push([change]);
  }
  return groups;
}

function toCase(
  facts: PairFacts,
  changes: NonEmpty<ModuleChange>,
  { logEnd, isLast }: { readonly logEnd: number; readonly isLast: boolean },
  plan: Plan,
  limits: VerifyLimits,
  rules: TimelineRules,
): SwapCase {
  const begin = changes[0].removed.earliest;
  const { to, settledAt } = endOf(facts.bringUps, changes, logEnd, limits);
  // What is waited for is timed by the clock that runs.
  const now = logEnd === facts.timeline.to ? facts.timeline.newest.time : logEnd;
  const counted = facts.losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  return {
    facts,
    changes,
    from: begin - limits.baselineSeconds * 1000,
    to,
    settledAt,
    // What another swap follows is over, no matter what it waited for.
    open: isLast
      ? openSwap(
          worksOf(facts, withBlanks(facts, changes, plan, { to, at: now }), plan, now),
          settledAt,
          Object.keys(plan),
        )
      : null,
    bringUps: facts.bringUps.filter((b) => b.start.time >= begin && b.start.time <= to),
    switchovers: facts.switchovers.filter((s) => s.at.time >= begin && s.at.time <= to),
    flapping: flappingSpells(counted, facts.timeline.to, rules.flapping),
    plan,
    limits,
    rules,
  };
}

/** A bring-up that begins before the end moves the end on, until the last one has settled and soaked. */
function endOf(
  bringUps: readonly BringUp[],
  changes: NonEmpty<ModuleChange>,
  logEnd: number,
  limits: VerifyLimits,
): { readonly to: number; readonly settledAt: number | null } {
  // While a module is out nothing has settled.
  if (changes.some((c, index) => c.inserted === null && isLastOfHalf(changes, index)))
    return { to: logEnd, settledAt: null };
  const lastInsertion = Math.max(...changes.map((c) => (c.inserted ?? c.removed).time));
  const firstInsertion = (changes[0].inserted ?? changes[0].removed).earliest;
  let settledAt: number | null = null;
  for (const bringUp of bringUps) {
    if (bringUp.start.time < firstInsertion || bringUp.start.time > logEnd) continue;
    // What begins after the soak of the last new module belongs to another day.
    if (
      settledAt !== null &&
      bringUp.start.time > Math.max(settledAt + limits.soakSeconds * 1000, lastInsertion)
    )
      break;
    if (bringUp.settled !== null && bringUp.settled.time <= logEnd)
      settledAt = Math.max(settledAt ?? 0, bringUp.settled.time);
    else if (bringUp.outcome !== 'superseded') settledAt = null;
  }
  if (settledAt === null || settledAt < lastInsertion) return { to: logEnd, settledAt: null };
  return { to: Math.min(logEnd, settledAt + limits.soakSeconds * 1000), settledAt };
}

function isLastOfHalf(changes: readonly ModuleChange[], index: number): boolean {
  return !changes.slice(index + 1).some((c) => c.half === changes[index]?.half);
}
