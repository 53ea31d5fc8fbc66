import { isHappening, type Signal, type StateSignal } from '../vocabulary.ts';
import type { Derived } from './derived.ts';
import { groupBy, keyOf } from './groups.ts';
import { type Merged, mergeSightings } from './merge.ts';
import { activeHalf, type Roles } from './roles.ts';
import type { TimelineRules } from './rules.ts';
import type { Break, Breaks } from './states.ts';
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
  return inTurn(happened);
}

/** A module that comes in by a note was preceded by the removal that readings show: that one ends by then. */
function inTurn(happened: readonly Happened[]): readonly Happened[] {
  const arrivals = happened.filter(
    ({ signal, item }) => signal === 'inserted' && item.streams.has(derivedStream),
  );
  return happened.map((gone) => {
    const { half, signal, item } = gone;
    if (signal !== 'removed' || !item.streams.has(derivedStream)) return gone;
    const arrived = arrivals.find(
      (a) => a.half === half && a.item.time > item.earliest && a.item.time < item.time,
    );
    return arrived === undefined ? gone : { ...gone, item: { ...item, time: arrived.item.time } };
  });
}

/** Names what is read off states, as a stream of its own. */
const derivedStream = 'derived';

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
    resumed: false,
    stream: derivedStream,
    spacing: 0,
    readUntil: derived.time,
    printed: null,
    spread: 0,
  };
}

const breaking: ReadonlySet<Signal> = new Set([
  'removed',
  'inserted',
  'restart',
  'reflash-start',
  'reflash-end',
]);

/** A removal leaves no partner, whichever half is out; what else happens to the active half does not touch its partner. */
function isOfPartner({ half, signal, item }: Happened, roles: Roles): boolean {
  return signal === 'removed' || half !== activeHalf(roles, item.time - 1);
}

const ofModule: ReadonlySet<StateSignal> = new Set(['serial', 'model', 'firmware']);

/**
 * What cannot have left a state as it was: work on the standby its readiness, and so the absence of the partner; work on a half its
 * light; and with a module its identity goes.
 */
export function breaksFor(
  half: string | null,
  signal: StateSignal,
  happened: readonly Happened[],
  absent: readonly Break[],
  roles: Roles,
): Breaks {
  const isRestating = signal === 'partner-ready' || signal === 'light';
  const work = happened.filter((h) => breaking.has(h.signal) && h.item.kind !== 'note');
  const restating = isRestating
    ? work.filter((h) => (signal === 'light' ? h.half === half : isOfPartner(h, roles)))
    : [];
  const ending = ofModule.has(signal)
    ? happened.filter((h) => h.half === half && h.signal === 'removed')
    : [];
  return {
    restating: inOrder([...restating.map(({ item }) => item), ...(signal === 'partner-ready' ? absent : [])]),
    lostValue: signal === 'partner-ready' ? 'no' : null,
    ending: inOrder(ending.map(({ item }) => item)),
  };
}

function inOrder(breaks: readonly Break[]): readonly Break[] {
  return [...breaks].sort((a, b) => a.time - b.time);
}
