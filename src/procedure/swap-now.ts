import { linesOf } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { identityAt } from '../timeline/module-changes.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { standbyAt } from '../timeline/standby.ts';
import { track, valueAt } from '../timeline/tracks.ts';
import type {
  ExpectedTime,
  HalfAt,
  HoldPoint,
  Instant,
  PairTimeline,
  PlannedModule,
  SourceLine,
  Swap,
  SwapNow,
} from '../vocabulary.ts';
import { expectedTime } from './expected-times.ts';
import type { HoldCase } from './hold-case.ts';
import { beforeLeaving, beforeRemoval, beforeSwitchover, type Expected } from './hold-points.ts';
import { openSwap, secondHalf } from './open-swap.ts';
import type { HalfInWork } from './procedure.ts';
import { limitSeconds as limits } from './table.ts';

/** One pair with all that is known of its swap. */
export interface PairInWork {
  readonly facts: PairFacts;
  /** All pairs: their bring-ups tell how long a step takes. */
  readonly fleet: readonly PairFacts[];
  readonly plan: Readonly<Record<string, PlannedModule>>;
  /** The halves in work in the order of their removals; empty before the first. */
  readonly works: readonly HalfInWork[];
  readonly swap: Swap | null;
  /** The work had begun before the first line. */
  readonly isBeforeLog: boolean;
  readonly rules: TimelineRules;
}

/** How a pair in work stands at its newest stamp. Source: design.md, section 5, "Around the swap". */
export function swapNow(pair: PairInWork): SwapNow {
  const { facts, swap } = pair;
  const { timeline } = facts;
  const at = timeline.newest.time;
  const expected = expectedOf(pair);
  const holdPoint = nextHoldPoint(pair, expected);
  return {
    pair: timeline.pair,
    site: timeline.site,
    at,
    clock: timeline.newest.file,
    habitSeconds: habitOf(timeline),
    ...awaited(pair, holdPoint, expected),
    holdPoint,
    halves: timeline.halves.map((half) => halfAt(timeline, half, at)),
    lines: lastLines(timeline),
    swap,
  };
}

/** When the last step of a swap came, to put the newest first: the last thing done, else when the log ends. */
export function lastStepOf({ timeline, switchovers }: PairFacts): number {
  const moved = timeline.events.findLast((e) => e.signal === 'removed' || e.signal === 'inserted');
  const exchanged = switchovers.at(-1)?.at.time;
  return Math.max(moved?.time ?? Number.NEGATIVE_INFINITY, exchanged ?? Number.NEGATIVE_INFINITY);
}

/** How long the step takes that a half in work is at; the firmware it is to come to, where it is still to be reflashed. */
function expectedOf({ facts, fleet, works, plan }: PairInWork): Expected {
  const work = works.at(-1);
  if (work === undefined) return { reflash: null, ready: null, steady: null };
  const { timeline } = facts;
  const { half } = work.change;
  const other = timeline.halves.find((h) => h !== half);
  const own = identityAt(timeline, half, work.at);
  const beside = other === undefined ? null : identityAt(timeline, other, work.at);
  const model = own.model ?? plan[half]?.model ?? null;
  const wanted = plan[half]?.firmware ?? beside?.firmware ?? null;
  const alike = { model, firmware: own.firmware ?? wanted, cause: work.bringUp?.cause ?? 'inserted' };
  return {
    reflash: expectedTime(fleet, { model, firmware: wanted, cause: 'reflash' }, 'reflash', work.bringUp),
    ready: expectedTime(fleet, alike, 'ready', work.bringUp),
    steady: expectedTime(fleet, alike, 'steady', work.bringUp),
  };
}

function nextHoldPoint(pair: PairInWork, expected: Expected): HoldPoint {
  const { facts, works, swap, plan } = pair;
  const { timeline } = facts;
  const at = timeline.newest.time;
  const last = works.at(-1);
  const [first, ...others] = works;
  if (first === undefined || last === undefined)
    return beforeRemoval(holdCase(pair, firstHalf(timeline, plan, at)), null);
  const second = others.length > 0 ? null : secondHalf([first], Object.keys(plan));
  const { half } = last.change;
  const isExchanged = valueAt(track(timeline, half, 'role'), at) === 'active';
  if (second !== null && isExchanged) return beforeRemoval(holdCase(pair, second), swap);
  const isLast = others.length > 0 || (second === null && isExchanged) || swap?.open === null;
  if (isLast) return beforeLeaving(holdCase(pair, half), swap);
  return beforeSwitchover(holdCase(pair, half), last, swap, expected);
}

/** The half that would be removed first: the standby, unless the plan names only the other. */
function firstHalf(timeline: PairTimeline, plan: PairInWork['plan'], at: number): string | null {
  const planned = Object.keys(plan);
  const standby = standbyAt(timeline, at);
  return standby !== null && planned.length > 0 && !planned.includes(standby)
    ? (planned[0] ?? null)
    : standby;
}

function holdCase({ facts, works, plan, rules, isBeforeLog }: PairInWork, half: string | null): HoldCase {
  return { facts, at: facts.timeline.newest.time, rules, plan, half, works, isBeforeLog };
}

type Awaited = Pick<SwapNow, 'awaits' | 'half' | 'says' | 'since' | 'limitSeconds' | 'expected'>;

function awaited(pair: PairInWork, holdPoint: HoldPoint, expected: Expected): Awaited {
  const { facts, swap, works } = pair;
  const [first, ...rest] = works;
  if (first === undefined) return beforeTheFirst(facts, holdPoint);
  const settledAt = works.at(-1)?.bringUp?.settled?.time ?? null;
  // Of work that no swap tells of the same table says what is awaited.
  const open = swap === null ? openSwap([first, ...rest], settledAt, Object.keys(pair.plan)) : swap.open;
  if (open === null) {
    const says = swap?.statement ?? 'Nothing is waited for any more.';
    return { awaits: null, half: null, says, since: null, limitSeconds: null, expected: null };
  }
  const { awaits, half, says, since, limitSeconds } = open;
  const times: Readonly<Record<string, ExpectedTime | null>> = { ...expected };
  return { awaits, half, says, since, limitSeconds, expected: times[awaits] ?? null };
}

/** Before the first removal: a redundant pair, then the removal itself. */
function beforeTheFirst({ timeline, readiness }: PairFacts, { status, half }: HoldPoint): Awaited {
  const nothing = { limitSeconds: null, expected: null };
  const ready = readiness.steps.at(-1);
  const since: Instant | null = ready === undefined ? null : { time: ready.time, earliest: ready.earliest };
  if (status === 'met') {
    const says = 'the first removal';
    return { awaits: 'out', half, says, since: null, ...nothing };
  }
  const isReady = readiness.signal === 'partner-ready' && ready?.value === 'yes';
  const isShort = ready !== undefined && (timeline.newest.time - ready.time) / 1000 < limits.baseline;
  const says =
    isReady && !isShort ? 'what is asked before a removal' : 'a ready partner without a break for 15 minutes';
  const limitSeconds = isReady && isShort ? limits.baseline : null;
  return { awaits: 'baseline', half: null, says, since, limitSeconds, expected: null };
}

/** How long after the newest stamp a row follows where the densest poll goes on as it did; `null` without a poll. */
function habitOf({ coverage }: PairTimeline): number | null {
  const spacings = coverage.flatMap(({ stream }) =>
    stream.kind === 'reading' && stream.spacing > 0 ? [stream.spacing] : [],
  );
  return spacings.length === 0 ? null : (spacingsOfHabit * Math.min(...spacings)) / 1000;
}

/** As for what counts as read. Source: design.md, section 2, Observed. */
const spacingsOfHabit = 3;

function halfAt(timeline: PairTimeline, half: string, at: number): HalfAt {
  const move = timeline.events.findLast(
    (e) => e.half === half && (e.signal === 'removed' || e.signal === 'inserted') && e.time <= at,
  );
  return {
    half,
    isOut: move?.signal === 'removed',
    role: valueAt(track(timeline, half, 'role'), at),
    light: valueAt(track(timeline, half, 'light'), at),
    ...identityAt(timeline, half, at),
  };
}

const mostLines = 5;

/** The lines of the last events, the newest last. */
function lastLines({ events }: PairTimeline): readonly SourceLine[] {
  const lines = events.slice(-mostLines).flatMap((e) => [...linesOf(e)]);
  const unique = new Map(lines.map((l) => [`${l.file}\n${l.line}`, l]));
  return [...unique.values()].slice(-mostLines);
}
