import {
  type Interval,
  isHappening,
  type PairTimeline,
  type Staff,
  type StaffStretch,
  type TimelineEvent,
} from '../vocabulary.ts';
import { clip, subtract } from './coverage.ts';
import type { PairFacts } from './facts.ts';
import { observationFor } from './observation.ts';
import type { TimelineRules } from './rules.ts';
import { staffStatesOf } from './staff-states.ts';
import { spells, stepAt, track, valueAt } from './tracks.ts';

const told: ReadonlySet<string> = new Set([
  'removed',
  'inserted',
  'restart',
  'reflash-start',
  'reflash-end',
  'fault',
  'sync-failed',
]);

/** What the staff of a pair shows between two instants. */
export function staffOf(facts: PairFacts, from: number, to: number, rules: TimelineRules): Staff {
  const { timeline, switchovers } = facts;
  const bringUps = bracketsOf(facts, rules.lightLimitSeconds);
  const inside = (e: { readonly time: number }): boolean => e.time >= from && e.time <= to;
  return {
    from,
    to,
    limitSeconds: rules.lightLimitSeconds,
    halves: timeline.halves,
    stretches: timeline.halves.flatMap((half) =>
      claimed(stretchesOf(facts, half, from, to), timeline.unobserved),
    ),
    lights: timeline.halves.flatMap((half) =>
      (['steady', 'flashing'] as const).flatMap((light) =>
        subtract(
          clip(spansOf(track(timeline, half, 'light'), light, timeline.to), from, to),
          observationFor(timeline, half, 'light').unobserved,
        ).map((span) => ({
          ...span,
          half,
          light,
        })),
      ),
    ),
    ticks: [
      ...concludedTicks(timeline, from, to),
      ...lossTicks(facts).filter(inside),
      ...timeline.events
        .filter((e) => inside(e) && told.has(e.signal) && isHappening(e.signal))
        .map(({ time, earliest, half, signal }) => ({ time, earliest, half, word: signal })),
    ],
    switchovers: switchovers
      .filter((s) => inside(s.at))
      .map(({ at, fromHalf, toHalf }) => ({ ...at, fromHalf, toHalf })),
    bringUps: bringUps
      .filter((b) => b.from >= from && b.from <= to)
      .map((b) => ({ ...b, to: Math.min(to, b.to) })),
    unobserved: clip(timeline.unobserved, from, to),
    states: staffStatesOf(facts, bringUps, rules)
      .filter((s) => s.to >= from && s.from <= to)
      .map((s) => ({ ...s, from: Math.max(from, s.from), to: Math.min(to, s.to) })),
  };
}

/** All bring-ups that are told of, from their start to where they settled or the watch ended. */
function bracketsOf({ bringUps }: PairFacts, limitSeconds: number): Staff['bringUps'] {
  return bringUps
    .filter((b) => b.outcome !== 'superseded' || b.light.outcome === 'exceeded')
    .map((b) => {
      const to = b.settled?.time ?? b.watchedTo;
      const flag = b.start.time + limitSeconds * 1000;
      return { half: b.half, from: b.start.time, to, flag, late: to > flag };
    });
}

/** A partner that was lost, on the line of the half that was standby: what was planned is told by its own happening. */
function lossTicks({ timeline, losses }: PairFacts): Staff['ticks'] {
  return losses
    .filter((l) => l.kind === 'counted')
    .map(({ event: { time, earliest } }) => ({
      time,
      earliest,
      half:
        timeline.halves.find((half) => valueAt(track(timeline, half, 'role'), time) === 'standby') ?? null,
      word: 'partner lost',
    }));
}

/** Where a half's line begins to be drawn by a role that is concluded from that of the other half. */
function concludedTicks(timeline: PairTimeline, from: number, to: number): Staff['ticks'] {
  return timeline.halves.flatMap((half) => {
    const roles = track(timeline, half, 'role');
    const first = stepAt(roles, from)?.concluded
      ? stepAt(roles, from)
      : roles.find((s) => s.concluded && s.time >= from && s.time <= to);
    if (first === undefined || !first.concluded) return [];
    const time = Math.max(from, first.time);
    return [{ time, earliest: time, half, word: 'role concluded' }];
  });
}

/** No claim is made where nothing was observed. */
function claimed(
  stretches: readonly StaffStretch[],
  unobserved: readonly Interval[],
): readonly StaffStretch[] {
  return stretches.flatMap((stretch) =>
    subtract([stretch], unobserved).map((part) => ({ ...stretch, ...part })),
  );
}

function spansOf(
  steps: readonly TimelineEvent[],
  value: string,
  end: number,
): readonly { from: number; to: number }[] {
  return spells(steps, value).map((s) => ({ from: s.start.time, to: s.end?.time ?? end }));
}

/** One half's line, cut wherever its role, its presence or the readiness of the pair changes. */
function stretchesOf(
  { timeline, readiness }: PairFacts,
  half: string,
  from: number,
  to: number,
): readonly StaffStretch[] {
  const roles = track(timeline, half, 'role');
  const moves = timeline.events.filter(
    (e) => e.half === half && (e.signal === 'removed' || e.signal === 'inserted'),
  );
  const unseen = observationFor(timeline, half, 'role').unobserved;
  const cuts = [
    ...[...roles, ...moves, ...readiness.steps].map((e) => e.time),
    ...unseen.flatMap((u) => [u.from, u.to]),
  ].filter((time) => time > from && time < to);
  const edges = [from, ...[...new Set(cuts)].sort((a, b) => a - b), to];
  const drawn = edges.slice(0, -1).map((edge, index): StaffStretch => {
    const out = moves.findLast((e) => e.time <= edge)?.signal === 'removed';
    const isUnseen = unseen.some((u) => u.from <= edge && u.to > edge);
    const role = isUnseen ? null : valueAt(roles, edge);
    const ready = valueAt(readiness.steps, edge);
    return {
      half,
      from: edge,
      to: edges[index + 1] ?? to,
      drawn: drawnAs(out, role, ready),
    };
  });
  return joined(drawn);
}

function drawnAs(out: boolean, role: string | null, ready: string | null): StaffStretch['drawn'] {
  if (out) return 'absent';
  if (role === 'active') return 'active';
  if (role === null) return 'unknown';
  return ready === 'yes' ? 'ready' : 'not-ready';
}

function joined(stretches: readonly StaffStretch[]): readonly StaffStretch[] {
  const result: StaffStretch[] = [];
  for (const stretch of stretches) {
    const last = result.at(-1);
    if (last !== undefined && last.drawn === stretch.drawn)
      result[result.length - 1] = { ...last, to: stretch.to };
    else result.push(stretch);
  }
  return result;
}
