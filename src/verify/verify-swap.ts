import { eventWith } from '../timeline/event-with.ts';
import { sumSpans } from '../timeline/exposure.ts';
import { groupBy } from '../timeline/groups.ts';
import { identityAt } from '../timeline/module-changes.ts';
import { staffOf } from '../timeline/staff.ts';
import { countUntil } from '../timeline/tracks.ts';
import type { CheckResult, CheckStatus, NonEmpty, Signal, Swap, SwapHalf, Verdict } from '../vocabulary.ts';
import type { Check, SwapCase } from './check.ts';
import { sayVerdict } from './say-verdict.ts';
import { stepsOf } from './steps.ts';
import type { Unread } from './unread.ts';

/** Judges one swap by all checks. Source: design.md, section 5. */
export function verifySwap(swap: SwapCase, checks: readonly Check[], unread: Unread): Swap {
  const { facts, from, to, changes, bringUps, switchovers } = swap;
  const results = checks.map(({ id, title, judge }): CheckResult => ({ id, title, ...judge(swap) }));
  const verdict = verdictOf(results, swap, unread);
  const steps = stepsOf(swap);
  const [first, ...rest] = changes;
  return {
    pair: facts.timeline.pair,
    site: facts.timeline.site,
    from,
    to,
    verdict,
    statement: sayVerdict(swap, verdict, results, unread),
    open: swap.open,
    halves: oneRowPerHalf([halfOf(swap, first), ...rest.map((change) => halfOf(swap, change))]),
    bringUps,
    switchovers,
    exposure: sumSpans(facts.timeline, facts.exposed, changes[0].removed.earliest, to),
    checks: results,
    steps,
    otherEvents: otherEvents(swap),
    staff: staffOf(facts, from, to, swap.rules),
  };
}

/** What the steps, the halves and the staff of a swap tell. */
const told: ReadonlySet<Signal> = new Set([
  'role',
  'partner-present',
  'partner-ready',
  'light',
  'firmware',
  'model',
  'serial',
  'removed',
  'inserted',
  'reflash-start',
  'reflash-end',
  'sync-start',
  'sync-failed',
  'switchover-command',
  'switchover',
]);

/** What happened besides the steps. Links that go down with a module and come back with it are part of its step. */
function otherEvents({ facts, from, to, rules }: SwapCase): Swap['otherEvents'] {
  const { events } = facts.timeline;
  const inside = events.slice(countUntil(events, from, 'before'), countUntil(events, to));
  const moves = events.filter((e) => e.signal === 'removed' || e.signal === 'inserted');
  const ofHalf = groupBy(moves, (e) => e.half ?? '');
  const others = inside.filter((e) => {
    if (e.initial || told.has(e.signal)) return false;
    const own = ofHalf.get(e.half ?? '') ?? [];
    const next = own[countUntil(own, e.time - rules.lagMs, 'before')];
    const withModule = next !== undefined && next.time <= e.time + rules.lagMs;
    return !(e.signal.startsWith('link') && withModule);
  });
  return others.map((e) => eventWith(e));
}

/** Failed if a check fails; undecided if one is, if the swap is open, or if what the verdict rests on was never logged or read. */
function verdictOf(results: readonly CheckResult[], { open }: SwapCase, unread: Unread): Verdict {
  const has = (status: CheckStatus, ids?: readonly string[]): boolean =>
    results.some((r) => r.status === status && (ids === undefined || ids.includes(r.id)));
  if (has('fail')) return 'not-verified';
  const isUndecided = open !== null || unread.leftOut.length > 0 || has('inconclusive');
  return isUndecided || has('not-observed', ['removed-standby', 'synchronised', 'soaked'])
    ? 'inconclusive'
    : 'verified';
}

function halfOf({ facts, to }: SwapCase, change: SwapCase['changes'][0]): SwapHalf {
  const { half, removed, inserted, before, found } = change;
  const after = identityAt(facts.timeline, half, to);
  return {
    half,
    removedAt: { time: removed.time, earliest: removed.earliest },
    insertedAt: inserted === null ? null : { time: inserted.time, earliest: inserted.earliest },
    model: { before: before.model, after: after.model },
    serial: { before: before.serial, after: after.serial },
    firmware: { before: before.firmware, found: found.firmware, after: after.firmware },
  };
}

/** A half whose new module was replaced again: from the first removal to the last insertion. */
function oneRowPerHalf(halves: NonEmpty<SwapHalf>): NonEmpty<SwapHalf> {
  const merged = new Map<string, SwapHalf>();
  for (const row of halves) {
    const first = merged.get(row.half);
    merged.set(
      row.half,
      first === undefined
        ? row
        : {
            ...row,
            removedAt: first.removedAt,
            model: { ...row.model, before: first.model.before },
            serial: { ...row.serial, before: first.serial.before },
            firmware: { ...row.firmware, before: first.firmware.before },
          },
    );
  }
  const [first, ...rest] = merged.values();
  return first === undefined ? halves : [first, ...rest];
}
