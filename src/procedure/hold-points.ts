import { linesOf } from '../timeline/evidence.ts';
import {
  type CheckStatus,
  type Condition,
  type ExpectedTime,
  type HoldPoint,
  type HoldPointId,
  type HoldStatus,
  type NonEmpty,
  type Swap,
  sayDuration,
} from '../vocabulary.ts';
import { cabinet, conditionOf, type HoldCase, linesFor } from './hold-case.ts';
import { conditionsOf } from './open-swap.ts';
import {
  configurationIsCurrent,
  firmwareIsSame,
  identitiesKnown,
  linksUp,
  nothingAtFault,
} from './pair-conditions.ts';
import { lightIsSteady, partnerLost, readyFor, rolesInConflict, rolesKnown } from './partner-conditions.ts';
import type { HalfInWork } from './procedure.ts';
import { limitSeconds } from './table.ts';

/** How long a new module takes here to be reflashed, to be ready and to have a steady light; `null` where nobody's bring-ups tell. */
export interface Expected {
  readonly reflash: ExpectedTime | null;
  readonly ready: ExpectedTime | null;
  readonly steady: ExpectedTime | null;
}

/** A hold point with its conditions, at the worst of them. */
export function holdPointOf(
  id: HoldPointId,
  half: string | null,
  conditions: NonEmpty<Condition>,
): HoldPoint {
  const order: readonly HoldStatus[] = ['stop', 'waiting', 'met'];
  const status = order.find((s) => conditions.some((c) => c.status === s)) ?? 'met';
  return { id, half, status, conditions, statement: sayHoldPoint(id, half, status, conditions) };
}

const before: Readonly<Record<HoldPointId, (half: string | null) => string>> = {
  removal: (half) => `Before the removal${half === null ? '' : ` of half ${half}`}`,
  switchover: (half) => `Before a switchover${half === null ? '' : ` to half ${half}`}`,
  leaving: () => 'Before leaving the cabinet',
};

function sayHoldPoint(
  id: HoldPointId,
  half: string | null,
  status: HoldStatus,
  conditions: NonEmpty<Condition>,
): string {
  const open = conditions.filter((c) => c.status === status);
  if (status === 'stop') return open[0]?.statement ?? '';
  const count = conditions.length;
  return status === 'met'
    ? `${before[id](half)}: all ${count} conditions are met.`
    : `${before[id](half)}: ${open.length} of ${count} conditions ${open.length === 1 ? 'is' : 'are'} not met.`;
}

/** Before a removal: the first, or that of the second half once the first has settled. */
export function beforeRemoval(hold: HoldCase, swap: Swap | null): HoldPoint {
  return holdPointOf('removal', hold.half, [
    rolesInConflict(hold) ?? rolesKnown(hold),
    partnerLost(hold) ?? readyFor(hold, limitSeconds.baseline),
    lightIsSteady(hold),
    linksUp(hold),
    configurationIsCurrent(hold),
    nothingAtFault(hold),
    identitiesKnown(hold),
    ...hold.works.slice(-1).map((work) => firstSettled(work)),
    ...broken(hold, swap),
  ]);
}

/** The half that was replaced first has settled, and its light is steady. */
function firstSettled({ bringUp, change }: HalfInWork): Condition {
  const { half } = change;
  const isSettled = bringUp !== null && bringUp.settled !== null;
  return conditionOf(
    'first-settled',
    half,
    isSettled ? 'met' : 'waiting',
    isSettled
      ? `Half ${half} was replaced and has settled.`
      : `Half ${half} was replaced and has not stayed ready for the hold time.`,
    bringUp?.evidence ?? linesOf(change.inserted ?? change.removed),
  );
}

/** Before a switchover onto the half in work. */
export function beforeSwitchover(
  hold: HoldCase,
  work: HalfInWork,
  swap: Swap | null,
  expected: Expected,
): HoldPoint {
  const steps = new Map(conditionsOf(work).map((c) => [c.id, c]));
  const orStop = (condition: Condition): Condition => {
    const step = steps.get(condition.id);
    return step?.status === 'stop' ? step : condition;
  };
  return holdPointOf('switchover', hold.half, [
    orStop(isIn(work)),
    orStop(isIdentified(work, steps.get('identified'))),
    rolesInConflict(hold) ?? rolesKnown(hold),
    withExpected(orStop(firmwareIsSame(hold)), expected.reflash),
    withExpected(partnerLost(hold) ?? orStop(readyFor(hold, hold.rules.holdMs / 1000)), expected.ready),
    withExpected(orStop(lightIsSteady(hold)), expected.steady),
    linksUp(hold),
    nothingAtFault(hold),
    ...broken(hold, swap),
  ]);
}

function isIn({ change: { half, removed, inserted } }: HalfInWork): Condition {
  return inserted === null
    ? conditionOf('in', half, 'waiting', `No module is in half ${half}.`, linesOf(removed))
    : conditionOf('in', half, 'met', `A module is in half ${half}.`, linesOf(inserted));
}

function isIdentified({ change }: HalfInWork, step: Condition | undefined): Condition {
  const { half, inserted, removed } = change;
  if (step !== undefined) return step;
  const statement = `The new module in half ${half} has not reported its identity.`;
  return conditionOf('identified', half, 'waiting', statement, linesOf(inserted ?? removed));
}

/** How long it takes here, where it is still waited for. */
function withExpected(condition: Condition, expected: ExpectedTime | null): Condition {
  if (condition.status !== 'waiting' || expected === null) return condition;
  return { ...condition, statement: `${condition.statement} ${sayExpected(expected)}` };
}

/** How long a step takes here: median and 95th percentile with the number of bring-ups they are of. */
function sayExpected({ median, p95, n }: ExpectedTime): string {
  const said = (seconds: number | null): string => (seconds === null ? 'not reached' : sayDuration(seconds));
  return `Here: median ${said(median)}, 95th percentile ${said(p95)} (n = ${n}).`;
}

/** Checks that, failed once, stop the work before it goes on. */
const stopping: ReadonlySet<string> = new Set([
  'removed-standby',
  'one-half-at-a-time',
  'identified-standby',
  'firmware-matched',
  'synchronised',
  'light-steady',
  'ready-before-switchover',
  'never-without-active',
]);

/** What has gone wrong already: the wrong half out, and every check that failed by what was logged. */
function broken(hold: HoldCase, swap: Swap | null): readonly Condition[] {
  const { plan, works } = hold;
  const planned = Object.keys(plan);
  const wrong = works.find((w) => planned.length > 0 && !planned.includes(w.change.half));
  const half = wrong?.change.half;
  const said = `Half ${half} was removed; the plan names half ${planned.join(' and ')}.`;
  const unplanned =
    wrong === undefined
      ? []
      : [conditionOf('planned-half', half ?? null, 'stop', said, linesOf(wrong.change.removed))];
  const failed = (swap?.checks ?? []).filter((c) => c.status === 'fail' && stopping.has(c.id));
  return [
    ...begunBefore(hold),
    ...unplanned,
    ...failed.map((c) => conditionOf(c.id, null, 'stop', c.statement, c.evidence)),
  ];
}

/** What was not seen is never met: a person looks. */
function begunBefore({ works, isBeforeLog }: HoldCase): readonly Condition[] {
  const [first] = works;
  if (first === undefined || !isBeforeLog) return [];
  const { half, removed } = first.change;
  const statement = `The log begins with half ${half} out: how it came to that was not observed; ${cabinet}.`;
  return [conditionOf('begun-before', half, 'waiting', statement, linesOf(removed))];
}

const statusOf: Readonly<Record<CheckStatus, HoldStatus>> = {
  pass: 'met',
  fail: 'stop',
  inconclusive: 'waiting',
  'not-observed': 'waiting',
};

/** Before leaving the cabinet: everything that is checked of a swap holds, and it is over. */
export function beforeLeaving(hold: HoldCase, swap: Swap | null): HoldPoint {
  const stops = [rolesInConflict(hold), partnerLost(hold)].filter((c) => c !== null);
  const own = swap === null ? statesAtEnd(hold) : checkedOf(hold, swap);
  const [first, ...rest] = [...stops, ...broken(hold, null), ...own];
  return holdPointOf('leaving', null, first === undefined ? statesAtEnd(hold) : [first, ...rest]);
}

/** What can be seen of a pair where no swap was. */
function statesAtEnd(hold: HoldCase): NonEmpty<Condition> {
  return [
    readyFor(hold, limitSeconds.soak),
    firmwareIsSame(hold),
    linksUp(hold),
    configurationIsCurrent(hold),
    nothingAtFault(hold),
  ];
}

/** The check that judges what a step waits for. */
const checkOfStep: Readonly<Record<string, string>> = { soak: 'soaked', steady: 'light-steady' };

/** The checks of a swap, with what is still waited for; a swap that is not verified though all its checks pass says why. */
function checkedOf(hold: HoldCase, swap: Swap): readonly Condition[] {
  const checked = swap.checks.map((check): Condition => {
    const statement =
      check.status === 'not-observed' ? `${check.statement} Not observed; ${cabinet}.` : check.statement;
    return conditionOf(check.id, null, statusOf[check.status], statement, check.evidence);
  });
  const order: readonly HoldStatus[] = ['stop', 'waiting'];
  const awaited = swap.open?.conditions ?? [];
  const doubt = conditionOf('verdict', null, 'waiting', swap.statement, linesFor(hold, []));
  const isDoubted = swap.verdict === 'inconclusive' && checked.every((c) => c.status === 'met');
  const open = order.flatMap((status) => awaited.filter((c) => c.status === status));
  // A wait is said once: by itself, and not by its check as well.
  const isSaid = ({ id, status }: Condition): boolean =>
    status === 'waiting' && open.some((c) => checkOfStep[c.id] === id);
  return [...open, ...(isDoubted ? [doubt] : []), ...checked.filter((c) => !isSaid(c))];
}
