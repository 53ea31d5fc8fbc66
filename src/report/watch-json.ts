import type { Condition, SwapNow } from '../vocabulary.ts';
import { toJsonLine } from './json.ts';

/** The JSON document of `watch`, on one line. Source: design.md, section 8. */
export function watchJson(now: SwapNow): string {
  const { pair, at, awaits, since, limitSeconds, holdPoint, halves, swap } = now;
  return toJsonLine({
    schema: 'steadypair/watch/1',
    at: { time: at, earliest: at },
    pair,
    awaits,
    since,
    limitSeconds,
    holdPoint: holdPoint.status,
    conditions: holdPoint.conditions.map(conditionDocument),
    halves,
    verdict: swap?.verdict ?? null,
  });
}

function conditionDocument({ id, half, status, statement, evidence }: Condition): unknown {
  return { id, half, status, statement, evidence };
}

/** How a swap stands, to tell a change by: not the time that passes, nor how long was waited so far. */
export function standingOf({ pair, awaits, half, holdPoint, swap }: SwapNow): string {
  const { id, half: of, status, conditions } = holdPoint;
  const each = conditions.map((c) => [c.id, c.half, c.status]);
  return JSON.stringify([pair, awaits, half, id, of, status, each, swap?.verdict ?? null]);
}

/** The same with all that a document holds of it. */
export function documentedOf(now: SwapNow): string {
  return JSON.stringify([standingOf(now), now.since, now.halves]);
}
