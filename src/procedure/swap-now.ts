import { linesOf } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { identityAt } from '../timeline/module-changes.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { standbyAt } from '../timeline/standby.ts';
import { countUntil, track, valueAt } from '../timeline/tracks.ts';
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
import { bringUpsBut, expectedTime } from './expected-times.ts';
import type { HoldCase } from './hold-case.ts';
import {
  baselineSeconds,
  beforeLeaving,
  beforeRemoval,
  beforeSwitchover,
  type Expected,
} from './hold-points.ts';
import { secondHalf } from './open-swap.ts';
import type { HalfInWork } from './procedure.ts';

/** One pair with all that is known of its swap. */
export interface PairInWork {
  readonly facts: PairFacts;
  /** All pairs: their bring-ups tell how long a step takes. */
  readonly fleet: readonly PairFacts[];
  readonly plan: Readonly<Record<string, PlannedModule>>;
  /** The halves in work in the order of their removals; empty before the first. */
  readonly works: readonly HalfInWork[];
  readonly swap: Swap | null;
  readonly rules: TimelineRules;
}

/** How a pair in work stands at its newest stamp. Source: design.md, section 5, "Around the swap". */
export function swapNow(pair: PairInWork): SwapNow {
  const { facts, swap } = pair;
  const { timeline } = facts;
  const at = timeline.to;
  const expected = expectedOf(pair);
  const holdPoint = nextHoldPoint(pair, expected);
  return {
    pair: timeline.pair,
    site: timeline.site,
    at,
    ...clockOf(timeline),
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

function expectedOf({ facts, fleet, works, plan }: PairInWork): Expected {
  const work = works.at(-1);
  if (work === undefined) return { ready: null, steady: null };
  const { timeline } = facts;
  const { half } = work.change;
  const other = timeline.halves.find((h) => h !== half);
  const own = identityAt(timeline, half, work.at);
  const beside = other === undefined ? null : identityAt(timeline, other, work.at);
  const alike = {
    model: own.model ?? plan[half]?.model ?? null,
    firmware: own.firmware ?? plan[half]?.firmware ?? beside?.firmware ?? null,
    cause: work.bringUp?.cause ?? null,
  };
  const bringUps = bringUpsBut(fleet, work.bringUp);
  return {
    ready: expectedTime(bringUps, alike, 'ready'),
    steady: expectedTime(bringUps, alike, 'steady'),
  };
}

function nextHoldPoint(pair: PairInWork, expected: Expected): HoldPoint {
  const { facts, works, swap, plan } = pair;
  const { timeline } = facts;
  const at = timeline.to;
  const last = works.at(-1);
  const [first, ...others] = works;
  if (first === undefined || last === undefined)
    return beforeRemoval(holdCase(pair, firstHalf(timeline, plan, at)), null);
  const second = others.length > 0 ? null : secondHalf([first], Object.keys(plan));
  const { half } = last.change;
  const isExchanged = valueAt(track(timeline, half, 'role'), at) === 'active';
  if (second !== null && isExchanged) return beforeRemoval(holdCase(pair, second), swap);
  const isLast = others.length > 0 || (second === null && isExchanged) || swap?.open === null;
  if (isLast && swap !== null) return beforeLeaving(holdCase(pair, half), swap);
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

function holdCase({ facts, works, plan, rules }: PairInWork, half: string | null): HoldCase {
  return { facts, at: facts.timeline.to, rules, plan, half, works };
}

type Awaited = Pick<SwapNow, 'awaits' | 'half' | 'says' | 'since' | 'limitSeconds' | 'expected'>;

function awaited({ facts, swap }: PairInWork, holdPoint: HoldPoint, expected: Expected): Awaited {
  if (swap === null) return beforeTheFirst(facts, holdPoint);
  const { open } = swap;
  if (open === null) {
    const says = swap.statement;
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
    const says = `half ${half} to be removed`;
    return { awaits: 'out', half, says, since: null, ...nothing };
  }
  const isReady = readiness.signal === 'partner-ready' && ready?.value === 'yes';
  const isShort = ready !== undefined && (timeline.to - ready.time) / 1000 < baselineSeconds;
  const says =
    isReady && !isShort
      ? 'what must hold before a removal'
      : 'a ready partner without a break for 15 minutes';
  const limitSeconds = isReady && isShort ? baselineSeconds : null;
  return { awaits: 'baseline', half: null, says, since, limitSeconds, expected: null };
}

/** The newest stamp's file, and how long after it a row follows where the densest poll goes on. */
function clockOf({ coverage }: PairTimeline): Pick<SwapNow, 'clock' | 'habitSeconds'> {
  const logs = coverage.filter((c) => c.stream.kind !== 'note');
  const newest = (logs.length > 0 ? logs : coverage).reduce((best, c) => (endOf(c) > endOf(best) ? c : best));
  const spacings = logs.flatMap(({ stream }) =>
    stream.kind === 'reading' && stream.spacing > 0 ? [stream.spacing] : [],
  );
  const densest = Math.min(...spacings);
  return {
    clock: newest.file,
    habitSeconds: spacings.length === 0 ? null : (spacingsOfHabit * densest) / 1000,
  };
}

/** As for what counts as read. Source: design.md, section 2, Observed. */
const spacingsOfHabit = 3;

function endOf({ span, stream }: PairTimeline['coverage'][0]): number {
  return stream.kind === 'entry' ? span.to : stream.last.time;
}

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
function lastLines({ events, to }: PairTimeline): readonly SourceLine[] {
  const end = countUntil(events, to);
  const lines = events.slice(Math.max(0, end - mostLines), end).flatMap((e) => [...linesOf(e)]);
  const unique = new Map(lines.map((l) => [`${l.file}\n${l.line}`, l]));
  return [...unique.values()].slice(-mostLines);
}
