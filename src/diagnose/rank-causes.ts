import {
  type DoubtedCause,
  isHappening,
  type NonEmpty,
  type PairTimeline,
  type Point,
  type RankedCause,
  type UnjudgedCause,
} from '../vocabulary.ts';
import { type Cause, doubted, type Trouble, type Weighed, type Weighing } from './cause.ts';

/** What the causes come to: those that something speaks for, by rank, those doubted, and those not judged. */
export interface Ranking {
  readonly causes: readonly RankedCause[];
  readonly doubted: readonly DoubtedCause[];
  readonly unjudged: readonly UnjudgedCause[];
}

/**
 * Weighs every cause and ranks them. First come those that reach ten to one, conditions before the module or slot that a trouble
 * follows and these before patterns, since the former may bring the latter about and are nearer to what can be put right; among
 * each kind the heavier first. If none reaches
 * it, too little data stands first. Then come the lighter ones by weight; below two to one a cause is only doubted.
 */
export function rankCauses(causes: readonly Cause[], trouble: Trouble): Ranking {
  const weighed: Weighed[] = [];
  for (const cause of causes) weighed.push(weigh(cause, trouble, weighed));
  const { limits } = trouble;
  const found = weighed.flatMap((w) => {
    const [first, ...rest] = w.weighing.for;
    const listed = w.cause.meta.kind === 'neither' || w.weighing.decibans >= limits.listDecibans;
    const points: NonEmpty<Point> | null = first === undefined ? null : [first, ...rest];
    return points === null || !listed ? [] : [{ w, points }];
  });
  const place = ({ cause, weighing }: Weighed): number => {
    const { kind } = cause.meta;
    return kind !== 'neither' && weighing.decibans < limits.leadDecibans ? kinds.length : kinds.indexOf(kind);
  };
  const ordered = found.toSorted(
    (a, b) => place(a.w) - place(b.w) || b.w.weighing.decibans - a.w.weighing.decibans,
  );
  const listed = new Set(found.map(({ w }) => w.cause.meta.id));
  const left = weighed.filter((w) => !listed.has(w.cause.meta.id) && w.cause.meta.kind !== 'neither');
  return {
    causes: ordered.map(({ w, points }, index) => toRanked(w, points, index + 1)),
    doubted: left.filter(isWeighed).map(toDoubted),
    unjudged: left
      .filter((w) => !isWeighed(w))
      .map(({ cause: { meta }, missing }) => ({ id: meta.id, title: meta.title, missing })),
  };
}

/** Something was read that can be told of it. */
function isWeighed({ missing, weighing }: Weighed): boolean {
  return missing.length === 0 || weighing.against.length > 0;
}

/** What comes first where several are strong, the nearest to what can be put right. */
const kinds: readonly Cause['meta']['kind'][] = ['condition', 'place', 'pattern', 'neither'];

function weigh(cause: Cause, trouble: Trouble, others: readonly Weighed[]): Weighed {
  const nothing = { decibans: 0, for: [], against: [] };
  const { meta } = cause;
  const missing = meta.needs.flatMap((any) =>
    any.some((s) => isLogged(trouble.facts.timeline, s)) ? [] : any,
  );
  if (missing.length > 0) return { cause, missing, weighing: nothing };
  // Without a log of readiness nobody knows that there is trouble.
  if (trouble.kind === 'unknown' && meta.kind !== 'neither')
    return { cause, missing: ['partner-ready'], weighing: nothing };
  const weighing = cause.weigh(trouble, others);
  const silent = weighing.for.length === 0 && weighing.against.length === 0 && meta.kind !== 'neither';
  return silent
    ? { cause, missing: meta.needs.flat(), weighing: untold(cause, trouble) }
    : { cause, missing, weighing };
}

/** Its signals are logged, but not of the half or the times that it would take: more of them would help. */
function untold({ meta }: Cause, { evidence }: Trouble): Weighing {
  const statement = `What was logged of ${meta.needs.flat().join(' and ')} does not cover the half or the times in question.`;
  return doubted([{ statement, evidence }]);
}

/** A happening counts as logged where a journal would have told it. */
function isLogged({ events, gauges, coverage }: PairTimeline, signal: string): boolean {
  if (events.some((e) => e.signal === signal) || gauges.some((g) => g.gauge === signal)) return true;
  return isHappening(signal) && coverage.some((c) => c.stream.kind === 'entry');
}

function toRanked(
  { cause: { meta }, weighing }: Weighed,
  points: NonEmpty<Point>,
  rank: number,
): RankedCause {
  return {
    id: meta.id,
    title: meta.title,
    rank,
    decibans: meta.kind === 'neither' ? null : Math.round(weighing.decibans * 10) / 10,
    for: points,
    against: weighing.against,
    next: weighing.next ?? meta.next,
  };
}

/** What speaks for a cause that stayed below two to one is told with what speaks against it. */
function toDoubted({ cause: { meta }, weighing }: Weighed): DoubtedCause {
  return { id: meta.id, title: meta.title, against: [...weighing.against, ...weighing.for] };
}
