import { isHappening, type Signal, type StateSignal } from '../vocabulary.ts';
import type { Derived } from './derive.ts';
import { groupBy, keyOf } from './groups.ts';
import { type Merged, mergeSightings } from './merge.ts';
import { activeHalf, type Roles } from './roles.ts';
import type { TimelineRules } from './rules.ts';
import type { Break } from './states.ts';
import type { Resolved } from './subjects.ts';

/** A happening of a half, or of the pair, as all sources tell it. */
export interface Happened {
  readonly half: string | null;
  readonly signal: Signal;
  readonly item: Merged;
}

/** Merges what was logged with what was derived; a note that tells of what a better source logged nearby stays a note. */
export function mergeHappenings(
  grouped: ReadonlyMap<string, readonly Resolved[]>,
  derived: readonly Derived[],
  rules: TimelineRules,
): readonly Happened[] {
  const lists = groupBy(
    [
      ...[...grouped.values()].filter(([first]) => first !== undefined && isHappening(first.signal)).flat(),
      ...derived.map(fromDerived),
    ],
    (s) => keyOf(s.half, s.signal),
  );
  const happened: Happened[] = [];
  for (const list of lists.values()) {
    const first = list[0];
    if (first === undefined) continue;
    const merged = mergeSightings(list, rules);
    const better = merged.filter((m) => m.kind !== 'note');
    for (const item of merged) {
      const retold =
        item.kind === 'note' &&
        first.signal !== 'note' &&
        better.some((m) => Math.abs(m.time - item.time) <= rules.noteLagMs);
      const signal = retold ? 'note' : first.signal;
      happened.push({
        half: first.half,
        signal,
        item: retold ? { ...item, value: item.sources[0].text } : item,
      });
    }
  }
  return happened;
}

function fromDerived(derived: Derived): Resolved {
  const { half, signal, time, earliest, resolution, sources } = derived;
  return {
    half,
    signal,
    time,
    earliest,
    resolution,
    sources,
    kind: 'reading',
    subject: { pair: '', half: derived.half, role: null },
    value: null,
    initial: false,
    stream: 'derived',
    spacing: 0,
    streamEnd: derived.time,
  };
}

const breaking: ReadonlySet<Signal> = new Set([
  'removed',
  'inserted',
  'restart',
  'reflash-start',
  'reflash-end',
]);

/** What can not have left the readiness of the pair, or the light of a half, as it was. */
export function breaksFor(
  half: string | null,
  signal: StateSignal,
  happened: readonly Happened[],
  roles: Roles,
): readonly Break[] {
  if (signal !== 'partner-ready' && signal !== 'light') return [];
  return happened
    .filter((h) => breaking.has(h.signal) && h.item.kind !== 'note')
    .filter((h) => (signal === 'light' ? h.half === half : h.half !== activeHalf(roles, h.item.time - 1)))
    .map(({ item }) => item)
    .sort((a, b) => a.time - b.time);
}
