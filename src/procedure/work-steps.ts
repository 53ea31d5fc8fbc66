import { endLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { identityAt } from '../timeline/module-changes.ts';
import { defaultRules, type TimelineRules } from '../timeline/rules.ts';
import { otherHalf, standbyAt } from '../timeline/standby.ts';
import type {
  Condition,
  ExpectedTime,
  HoldPoint,
  HoldPointId,
  NonEmpty,
  PlannedModule,
  SourceLine,
  WorkStep,
} from '../vocabulary.ts';
import { expectedTime, type Timed } from './expected-times.ts';
import { beforeRemoval, holdPointOf } from './hold-points.ts';
import { type Asked, holdPoints, table, withHalf } from './table.ts';

/** What a sheet is made from. */
interface Sheet {
  readonly facts: PairFacts;
  readonly fleet: readonly PairFacts[];
  readonly plan: Readonly<Record<string, PlannedModule>>;
  readonly at: number;
  readonly rules: TimelineRules;
}

type Row = (typeof table)[number];

/**
 * The steps of a whole swap for a work sheet: of the standby first, then of the other half, or of the planned halves alone; one that is
 * planned and active now is made standby before. The hold point before the first removal stands as it does at the instant; those after it
 * wait, since nothing of that work is done. Expected times are of the planned model and firmware, else of what the pair runs.
 */
export function workSteps(
  facts: PairFacts,
  fleet: readonly PairFacts[],
  plan: Readonly<Record<string, PlannedModule>>,
  at: number,
  rules: TimelineRules = defaultRules,
): readonly WorkStep[] {
  const sheet = { facts, fleet, plan, at, rules };
  const standby = standbyAt(facts.timeline, at);
  const halves = halvesToReplace(sheet, standby);
  const isActiveFirst = standby !== null && halves[0] !== standby;
  const ofHalves = halves.flatMap((half, index): readonly WorkStep[] => [
    ...rowsOf(workRows).map((row) => toStep(sheet, row, half, index)),
    ...(index < halves.length - 1
      ? rowsOf(['switchover']).map((row) => toStep(sheet, row, half, index))
      : []),
  ]);
  return [
    ...rowsOf(['baseline']).map((row) => toStep(sheet, row, null, 0)),
    ...(isActiveFirst ? rowsOf(['switchover']).map((row) => toStep(sheet, row, standby, 0)) : []),
    ...ofHalves,
    ...rowsOf(['soak']).map((row) => toStep(sheet, row, null, 0)),
  ];
}

const workRows: readonly Row['id'][] = [
  'out',
  'in',
  'identified',
  'reflash',
  'synchronising',
  'ready',
  'steady',
];

function rowsOf(ids: readonly Row['id'][]): readonly Row[] {
  return table.filter((row) => ids.includes(row.id));
}

/** In the order of the work; one `null` where no line says which half is standby. */
function halvesToReplace({ facts, plan }: Sheet, standby: string | null): readonly (string | null)[] {
  const { timeline } = facts;
  const first = standby === null ? [] : [standby, otherHalf(timeline, standby)].filter((h) => h !== null);
  const order = standby === null ? timeline.halves : first;
  const planned = order.filter((half) => Object.hasOwn(plan, half));
  if (planned.length > 0) return planned;
  return standby === null ? order.map(() => null) : order;
}

function toStep(sheet: Sheet, row: Row, half: string | null, place: number): WorkStep {
  return {
    id: row.id,
    half,
    title: withHalf(row.title, half),
    limitSeconds: row.limitSeconds,
    holdPoint: row.holdPoint === null ? null : holdPointAt(sheet, row.holdPoint, half, place),
    expected: expectedAt(sheet, row.id, half),
  };
}

function holdPointAt(sheet: Sheet, id: HoldPointId, half: string | null, place: number): HoldPoint {
  if (id === 'removal' && place === 0)
    return beforeRemoval({ ...sheet, half, works: [], isBeforeLog: false }, null);
  const asked: readonly Asked[] = holdPoints[id];
  const evidence = endLines(sheet.facts.timeline);
  const [first, ...rest] = asked.map((condition) => ahead(condition, half, evidence));
  if (first === undefined) throw new RangeError(`Hold point ${id} asks nothing.`);
  return holdPointOf(id, id === 'leaving' ? null : half, [first, ...rest]);
}

/** What must be so later in the work: as of now it waits. */
function ahead({ id, asks }: Asked, half: string | null, evidence: NonEmpty<SourceLine>): Condition {
  return { id, half, status: 'waiting', statement: withHalf(asks, half), evidence };
}

const timedSteps: Readonly<Partial<Record<Row['id'], Timed>>> = {
  reflash: 'reflash',
  ready: 'ready',
  steady: 'steady',
};

/** After a reflash where such bring-ups tell, else after an insertion. */
function expectedAt(sheet: Sheet, id: Row['id'], half: string | null): ExpectedTime | null {
  const timed = timedSteps[id];
  if (timed === undefined || half === null) return null;
  const { facts, fleet, plan, at } = sheet;
  const other = otherHalf(facts.timeline, half);
  const beside = other === null ? null : identityAt(facts.timeline, other, at).firmware;
  const model = plan[half]?.model ?? identityAt(facts.timeline, half, at).model;
  const firmware = plan[half]?.firmware ?? beside;
  const after = (cause: 'reflash' | 'inserted'): ExpectedTime | null =>
    expectedTime(fleet, { model, firmware, cause }, timed, null);
  return after('reflash') ?? after('inserted');
}
