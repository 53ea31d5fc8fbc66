import { allChanges } from '../changes.ts';
import type { Change, ImportedFile } from '../vocabulary.ts';
import { groupBy } from './groups.ts';

/** How far apart two sightings of one change may be stamped to be taken for a pair, in milliseconds. Chosen here. */
const reach = 7_200_000;

/** A change as a file tells it, and the half that does. */
interface Telling {
  readonly change: Change;
  readonly speaker: string | null;
}

export type Tellings = ReadonlyMap<string, readonly Telling[]>;

export interface Matched {
  readonly change: Change;
  readonly other: Change;
}

/** True if both were written at one time, and each tells of all that the other does in it. */
export function agreeAsTheyAre(
  file: ImportedFile,
  base: ImportedFile,
  own: Tellings,
  known: Tellings,
  tolerance: number,
): boolean {
  if (!overlaps(file, base)) return false;
  const from = Math.max(file.input.from ?? 0, base.input.from ?? 0) + tolerance;
  const to = Math.min(file.input.to ?? 0, base.input.to ?? 0) - tolerance;
  const inside = (list: readonly Telling[] = []): readonly Telling[] =>
    list.filter(({ change }) => middle(change) > from && middle(change) < to);
  return [...new Set([...own.keys(), ...known.keys()])].every((meaning) => {
    const [a, b] = [own.get(meaning) ?? [], known.get(meaning) ?? []];
    const isTold = (list: readonly Telling[], others: readonly Telling[]): boolean =>
      pairsAt(inside(list), others, 0, tolerance).length === inside(list).length;
    return isTold(a, b) && isTold(b, a);
  });
}

/** True if both were written at one time: of files that follow each other there is nothing to measure. */
export function overlaps({ input: a }: ImportedFile, { input: b }: ImportedFile): boolean {
  if (a.from === null || a.to === null || b.from === null || b.to === null) return false;
  return a.from < b.to && b.from < a.to;
}

/**
 * The changes that both files saw, one to one and in order: under the one shift of the clocks that brings most of them together,
 * of several the least. None where that is less than half of what either tells: then it is chance.
 */
export function matched(
  own: Tellings,
  known: Tellings,
  shifts: readonly number[],
  tolerance: number,
): readonly Matched[] {
  const lists = [...own].map(([meaning, list]) => ({ list, others: known.get(meaning) ?? [] }));
  const comparable = lists.reduce((sum, { list, others }) => sum + Math.min(list.length, others.length), 0);
  let best: readonly Matched[] = [];
  for (const shift of shifts) {
    const pairs = moreThan(best.length, lists, comparable, shift, tolerance);
    if (pairs !== null) best = pairs;
  }
  return best.length * 2 > comparable ? best : [];
}

interface Lists {
  readonly list: readonly Telling[];
  readonly others: readonly Telling[];
}

/** The pairs of all lists under a shift, if they are more than so many; it gives up as soon as they cannot be. */
function moreThan(
  most: number,
  lists: readonly Lists[],
  comparable: number,
  shift: number,
  tolerance: number,
): readonly Matched[] | null {
  const all: (readonly Matched[])[] = [];
  let possible = comparable;
  for (const { list, others } of lists) {
    const spare = possible - most - 1;
    if (spare < 0) return null;
    const atMost = Math.min(list.length, others.length);
    const pairs = pairsAt(list, others, shift, tolerance, atMost - spare);
    possible -= atMost - pairs.length;
    all.push(pairs);
  }
  return possible > most ? all.flat() : null;
}

/** How many changes of each meaning, and how many shifts, are tried: enough to find one that fits, of long lists not all. */
const [triedChanges, triedShifts] = [6, 200];

/** Shifts that bring one of the first changes of a meaning onto one of the others within reach; the least first. */
export function shiftsOf(own: Tellings, known: Tellings): readonly number[] {
  const shifts = [...own].flatMap(([meaning, list]) =>
    list.slice(0, triedChanges).flatMap((a) =>
      (known.get(meaning) ?? [])
        .filter((b) => isSameSpeaker(a, b))
        .map((b) => middle(a.change) - middle(b.change))
        .filter((d) => Math.abs(d) <= reach),
    ),
  );
  return [...new Set([0, ...shifts])].sort((a, b) => Math.abs(a) - Math.abs(b)).slice(0, triedShifts);
}

/** Pairs in order where the second list is set off by a shift; not all of them where they cannot be as many as are of use. */
function pairsAt(
  list: readonly Telling[],
  others: readonly Telling[],
  shift: number,
  tolerance: number,
  least = 0,
): readonly Matched[] {
  const pairs: Matched[] = [];
  let place = 0;
  for (const [index, telling] of list.entries()) {
    if (pairs.length + list.length - index < least) return pairs;
    const at = middle(telling.change) - shift;
    const slack = tolerance + halfWidth(telling.change);
    for (let other = others[place]; other !== undefined; other = others[place]) {
      const apart = middle(other.change) - at;
      const room = slack + halfWidth(other.change);
      if (apart > room) break;
      place += 1;
      if (apart < -room || !isSameSpeaker(telling, other)) continue;
      pairs.push({ change: telling.change, other: other.change });
      break;
    }
  }
  return pairs;
}

/** What the two halves each say of the pair at their own times is not one change seen twice. */
function isSameSpeaker(a: Telling, b: Telling): boolean {
  return a.speaker === null || b.speaker === null || a.speaker === b.speaker;
}

/** The changes of a file that say the same, in the order of time. */
export function tellingsOf(file: ImportedFile): Tellings {
  const tellings = allChanges(file.changes)
    .filter(isTimed)
    .map((change) => ({ change, speaker: file.streams[change.stream]?.subject.half ?? null }))
    .sort((a, b) => middle(a.change) - middle(b.change));
  return groupBy(tellings, ({ change }) => meaningOf(change));
}

/** A first reading, or one after silence, says how things are, not when they changed; a note tells the minute only. */
function isTimed({ kind, before, value, earliest, time }: Change): boolean {
  if (kind === 'entry') return true;
  return kind === 'reading' && !(before === null && earliest === time) && before !== value;
}

function meaningOf({ subject, signal, value }: Change): string {
  return [subject.pair, subject.half ?? subject.role ?? '', signal, value ?? ''].join('\n');
}

export function middle({ time, earliest }: Change): number {
  return (time + earliest) / 2;
}

function halfWidth({ time, earliest }: Change): number {
  return (time - earliest) / 2;
}
