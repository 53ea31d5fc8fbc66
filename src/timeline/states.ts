import type { NonEmpty, Source } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import type { Merged } from './merge.ts';

/** One step of a state: what it became, and what it was before (`null`: not known). */
export interface StateStep extends Stamp {
  readonly value: string | null;
  readonly before: string | null;
  readonly initial: boolean;
  readonly sources: NonEmpty<Source>;
}

/** Something after which a state can not have stayed as it was, though no log says so: a removal, a restart, a reflash. */
export interface Break extends Stamp {
  readonly sources: NonEmpty<Source>;
}

/**
 * The steps of one state from the merged sightings of all streams, in the order of time. A value that is already so is
 * no step, unless a break lies between: then the log restates it because it was lost in between, and `lostValue`, where
 * given, is put at the break (ready, pulled, ready: the partner was not ready from the removal on).
 */
export function toSteps(
  merged: readonly Merged[],
  breaks: readonly Break[],
  lostValue: string | null,
): readonly StateStep[] {
  const steps: StateStep[] = [];
  let readUntil = 0;
  for (const item of merged) {
    const last = steps.at(-1);
    if (last !== undefined && last.value === item.value) {
      const broken = item.initial
        ? undefined
        : breaks.find((b) => b.time > last.time && b.time <= item.earliest);
      if (broken !== undefined && item.kind === 'entry') {
        if (lostValue !== null && lostValue !== item.value) steps.push(lost(broken, lostValue, last.value));
        steps.push(step(item, steps.at(-1)?.value ?? null, item.earliest));
      }
      readUntil = Math.max(readUntil, item.readUntil);
      continue;
    }
    // A first reading that differs from what another source said before: it changed somewhere in between.
    const known =
      last === undefined ? item.earliest : Math.max(last.time, readUntil < item.time ? readUntil : 0);
    const earliest = item.initial && last !== undefined ? Math.min(known, item.time) : item.earliest;
    steps.push(step(item, last?.value ?? null, earliest));
    readUntil = item.readUntil;
  }
  return steps;
}

function step(item: Merged, before: string | null, earliest: number): StateStep {
  const { time, resolution, value, sources } = item;
  return { time, earliest, resolution, value, before, initial: item.initial && before === null, sources };
}

function lost(at: Break, value: string, before: string | null): StateStep {
  const { time, earliest, resolution, sources } = at;
  return { time, earliest, resolution, value, before, initial: false, sources };
}
