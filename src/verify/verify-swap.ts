import { sumSpans } from '../timeline/exposure.ts';
import { groupBy } from '../timeline/groups.ts';
import { identityAt } from '../timeline/module-changes.ts';
import { staffOf } from '../timeline/staff.ts';
import { countUntil } from '../timeline/tracks.ts';
import type { CheckResult, CheckStatus, NonEmpty, Swap, SwapHalf, Verdict } from '../vocabulary.ts';
import type { Check, SwapCase } from './check.ts';
import { stepsOf } from './steps.ts';

/** Judges one swap by all checks. Source: design.md, section 5. */
export function verifySwap(swap: SwapCase, checks: readonly Check[]): Swap {
  const { facts, from, to, changes, bringUps, switchovers } = swap;
  const results = checks.map(({ id, title, judge }): CheckResult => ({ id, title, ...judge(swap) }));
  const verdict = verdictOf(results);
  const steps = stepsOf(swap);
  const [first, ...rest] = changes;
  return {
    pair: facts.timeline.pair,
    site: facts.timeline.site,
    from,
    to,
    verdict,
    statement: sentence(swap, verdict, results),
    halves: oneRowPerHalf([halfOf(swap, first), ...rest.map((change) => halfOf(swap, change))]),
    bringUps,
    switchovers,
    exposure: sumSpans(facts.exposed, changes[0].removed.earliest, to),
    checks: results,
    steps,
    otherEvents: otherEvents(swap),
    staff: staffOf(facts, from, to, swap.rules.lightLimitSeconds),
  };
}

const others: ReadonlySet<string> = new Set([
  'note',
  'fault',
  'supply',
  'configuration',
  'links',
  'link-a',
  'link-b',
  'restart',
]);

/** What happened besides the steps. Links that go down with a module and come back with it are part of its step. */
function otherEvents({ facts, from, to, rules }: SwapCase): Swap['otherEvents'] {
  const { events } = facts.timeline;
  const inside = events.slice(countUntil(events, from, 'before'), countUntil(events, to));
  const moves = events.filter((e) => e.signal === 'removed' || e.signal === 'inserted');
  const ofHalf = groupBy(moves, (e) => e.half ?? '');
  return inside.filter((e) => {
    if (e.initial || !others.has(e.signal)) return false;
    const own = ofHalf.get(e.half ?? '') ?? [];
    const next = own[countUntil(own, e.time - rules.lagMs, 'before')];
    const withModule = next !== undefined && next.time <= e.time + rules.lagMs;
    return !(e.signal.startsWith('link') && withModule);
  });
}

/** Failed if a check fails; undecided if one is, or if what the verdict rests on was never logged. */
function verdictOf(results: readonly CheckResult[]): Verdict {
  const has = (status: CheckStatus, ids?: readonly string[]): boolean =>
    results.some((r) => r.status === status && (ids === undefined || ids.includes(r.id)));
  if (has('fail')) return 'not-verified';
  return has('inconclusive') || has('not-observed', ['removed-standby', 'synchronised', 'soaked'])
    ? 'inconclusive'
    : 'verified';
}

function sentence({ facts, changes }: SwapCase, verdict: Verdict, results: readonly CheckResult[]): string {
  const { pair } = facts.timeline;
  const halves = [...new Set(changes.map((c) => c.half))];
  const what =
    halves.length === 1 ? `half ${halves[0]} was replaced` : `halves ${halves.join(' and ')} were replaced`;
  const titles = (status: CheckStatus): string =>
    results
      .filter((r) => r.status === status)
      .map((r) => r.title.charAt(0).toLowerCase() + r.title.slice(1))
      .join('; ');
  const unseen = titles('not-observed');
  const byHand = unseen === '' ? '' : ` Not observed, to be signed for by hand: ${unseen}.`;
  if (verdict === 'verified') return `Pair ${pair} is verified: ${what} and it came back redundant.${byHand}`;
  if (verdict === 'not-verified')
    return `Pair ${pair} is not verified: ${what}, but these checks failed: ${titles('fail')}.${byHand}`;
  const open = titles('inconclusive');
  const why = open === '' ? '' : ` The logs do not settle: ${open}.`;
  return `Pair ${pair} is neither verified nor refuted: ${what}.${why}${byHand}`;
}

function halfOf({ facts, to }: SwapCase, change: SwapCase['changes'][0]): SwapHalf {
  const { half, removed, inserted, before, found } = change;
  const after = identityAt(facts.timeline, half, to);
  return {
    half,
    removedAt: { time: removed.time, earliest: removed.earliest },
    insertedAt: { time: inserted.time, earliest: inserted.earliest },
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
