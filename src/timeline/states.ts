import type { Instant, NonEmpty, Source } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import type { Merged } from './merge.ts';
import { countUntil } from './tracks.ts';

/** One step of a state: what it became, and what it was before (`null`: not known). */
export interface StateStep extends Stamp {
  readonly value: string | null;
  readonly before: string | null;
  readonly initial: boolean;
  readonly kind: Merged['kind'];
  /** No line states it: it is reasoned from the other half's. */
  readonly concluded: boolean;
  readonly sources: NonEmpty<Source>;
}

/** Something after which a state cannot have stayed as it was, though no log says so: a removal, a restart, a reflash. */
export interface Break extends Stamp {
  readonly kind: Merged['kind'];
  readonly sources: NonEmpty<Source>;
}

/** What cannot have left a state as it was, each list in the order of time. */
export interface Breaks {
  /** Where the log restates a value after one of these, it was lost in between, and `lostValue`, where given, is put there. */
  readonly restating: readonly Break[];
  readonly lostValue: string | null;
  /** Nothing is known of the state from here on until a log tells of it again, unless a poll goes on to read it. */
  readonly ending: readonly Break[];
}

export const noBreaks: Breaks = { restating: [], lostValue: null, ending: [] };

/**
 * The steps of one state from the merged sightings of all streams, both in the order of time. A value that is already so is
 * no step, unless a break lies between (ready, pulled, ready: the partner was not ready from the removal on). A change seen by
 * one poll did not come before another last read the old value.
 */
export function toSteps(merged: readonly Merged[], breaks: Breaks): readonly StateStep[] {
  const steps: StateStep[] = [];
  let knownUntil = Number.NEGATIVE_INFINITY;
  for (const item of merged) {
    const end = endBetween(breaks.ending, steps.at(-1), item.time, knownUntil);
    if (end !== undefined) steps.push(toLost(end, null, steps.at(-1)?.value ?? null));
    const last = steps.at(-1);
    if (last === undefined) steps.push(toStep(item, null, item.earliest));
    else if (last.value === item.value) {
      steps.push(...restated(item, last, breaks, knownUntil));
      knownUntil = Math.max(knownUntil, item.readUntil);
      continue;
    } else steps.push(toStep(item, last.value, earliestOf(item, last, knownUntil)));
    knownUntil = item.readUntil;
  }
  const end = endBetween(breaks.ending, steps.at(-1), Number.POSITIVE_INFINITY, knownUntil);
  return end === undefined ? steps : [...steps, toLost(end, null, steps.at(-1)?.value ?? null)];
}

/** The first end after the last step, if it comes before `time` and no poll read the value after it. */
function endBetween(
  ends: readonly Break[],
  last: StateStep | undefined,
  time: number,
  knownUntil: number,
): Break | undefined {
  if (last === undefined || last.value === null) return undefined;
  const found = ends[countUntil(ends, Math.max(last.time, knownUntil))];
  return found !== undefined && found.time <= time ? found : undefined;
}

/** When a change that follows another step can have happened at the earliest; `knownUntil` is when the value before was last read. */
export function earliestOf(
  item: Pick<Merged, 'time' | 'earliest' | 'initial' | 'resumed'>,
  last: Instant,
  knownUntil: number,
): number {
  const known = knownUntil < item.time ? knownUntil : Number.NEGATIVE_INFINITY;
  // A reading that differs from what another source said before: it changed somewhere in between.
  if (item.initial || item.resumed) return Math.min(item.time, Math.max(last.time, known));
  return item.earliest === item.time ? item.time : Math.max(item.earliest, known, last.earliest);
}

/** An entry says that it is so again; so does a reading, if nobody read it through the break. */
function restated(
  item: Merged,
  last: StateStep,
  { restating, lostValue }: Breaks,
  knownUntil: number,
): readonly StateStep[] {
  const broken = restating[countUntil(restating, last.time)];
  if (broken === undefined || broken.time > item.time) return [];
  // What it was lost to it was already.
  if (lostValue === item.value) return [];
  const isFirst = item.initial && knownUntil <= broken.earliest;
  if (item.kind !== 'entry' && !item.resumed && !isFirst) return [];
  const lost = lostValue === null ? [] : [toLost(broken, lostValue, last.value)];
  const since = isFirst ? knownUntil : item.earliest;
  const earliest =
    item.resumed || isFirst ? Math.min(item.time, Math.max(since, broken.earliest)) : item.earliest;
  return [...lost, toStep(item, lost[0]?.value ?? last.value, earliest)];
}

function toStep(item: Merged, before: string | null, earliest: number): StateStep {
  const { kind, time, resolution, value, sources } = item;
  const initial = item.initial && before === null;
  return { kind, time, earliest, resolution, value, before, initial, concluded: false, sources };
}

function toLost(at: Break, value: string | null, before: string | null): StateStep {
  const { kind, time, earliest, resolution, sources } = at;
  return { kind, time, earliest, resolution, value, before, initial: false, concluded: false, sources };
}
