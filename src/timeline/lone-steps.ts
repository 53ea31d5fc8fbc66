import type { TimelineEvent } from '../vocabulary.ts';
import { isState } from './merge.ts';
import { Seen } from './seen.ts';
import { byTime } from './sightings.ts';
import { type Breaks, earliestOf } from './states.ts';
import type { Resolved } from './subjects.ts';

/**
 * The steps of a state that one stream alone tells and that nothing breaks, just as `toSteps` gives those of `mergeSightings`, but still in
 * the columns of their file: most of what a long log tells is of this kind. `null` where it is not.
 */
export function loneSteps(
  list: readonly Resolved[],
  { restating, ending }: Breaks,
): readonly TimelineEvent[] | null {
  const [first] = list;
  if (first === undefined || ending.length > 0) return null;
  if (restating.length > 0 && list.some(restates)) return null;
  const own = list.filter((item) => item instanceof Seen);
  const { stream } = first;
  const isLone = own.length === list.length && own.every((s) => s.stream === stream && s.of.offset === null);
  return isLone ? stepsIn(own.sort(byTelling)) : null;
}

/** What may say after a break that something is so again; a poll that read on all the while does not. */
function restates({ kind, resumed, initial }: Resolved, index: number): boolean {
  return kind === 'entry' || resumed || (initial && index > 0);
}

/** Order of time; of what one stamp tells, what was so already comes before what became so. */
function byTelling(a: Seen, b: Seen): number {
  return byTime(a, b) || Number(isState(b)) - Number(isState(a));
}

function stepsIn(own: readonly Seen[]): readonly TimelineEvent[] {
  const steps: SeenStep[] = [];
  let last: SeenStep | undefined;
  let knownUntil = Number.NEGATIVE_INFINITY;
  for (const item of own) {
    if (last !== undefined && last.value === item.value) {
      knownUntil = Math.max(knownUntil, item.readUntil);
      continue;
    }
    const since = last === undefined ? item.earliest : earliestOf(item, last, knownUntil);
    last = new SeenStep(item, last?.value ?? null, since);
    steps.push(last);
    knownUntil = item.readUntil;
  }
  return steps;
}

/** A step that is still columns, but for what the steps before it say of it. A class for the reason that `Seen` is one. */
class SeenStep extends Seen implements TimelineEvent {
  readonly about: string | null;
  readonly before: string | null;
  /** Since when it may have been so, where that is not what its own stream tells. */
  readonly since: number | null;

  constructor(item: Seen, before: string | null, since: number) {
    super(item.of, item.place);
    this.about = item.half;
    this.before = before;
    this.since = since === item.earliest ? null : since;
  }

  get concluded(): false {
    return false;
  }

  override get half(): string | null {
    return this.about;
  }

  get pair(): string {
    return this.subject.pair;
  }

  override get earliest(): number {
    return this.since ?? super.earliest;
  }

  override get initial(): boolean {
    return super.initial && this.before === null;
  }
}
