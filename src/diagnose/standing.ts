import { total } from '../timeline/coverage.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { Loss } from '../timeline/losses.ts';
import { observationFor, unobservedIn } from '../timeline/observation.ts';
import type { Readiness } from '../timeline/readiness.ts';
import { activeAt } from '../timeline/standby.ts';
import { countUntil, type Spell, spells, track } from '../timeline/tracks.ts';
import type { PairTimeline, TimelineEvent } from '../vocabulary.ts';

/** How a pair stood when its log ended, as far as that was read, and what it had lost before. */
export interface Standing {
  /** What it rests on: `partner-present` where readiness itself was never logged; `null` if neither was. */
  readonly signal: Readiness['signal'];
  readonly value: 'yes' | 'no' | null;
  /** The change that made it so; where that is `initial` it was so when the log began. `null` if nothing was logged. */
  readonly since: TimelineEvent | null;
  /** What a ready partner cannot have outlasted, and after which nothing tells of it any more; `null` without. */
  readonly endedBy: TimelineEvent | null;
  /** When it was last read, where nothing tells of the time after that; `null` if it was read to the end. */
  readonly lastRead: number | null;
  /** From the change to the end or the last reading, and how much of that was not observed. */
  readonly seconds: number;
  readonly unseenSeconds: number;
  /** The losses before, but those of planned work, in the order of time. */
  readonly losses: readonly Loss[];
  /** Times in which no second module was seen, though no line says that the partner was not ready. */
  readonly dropOuts: readonly Spell[];
}

const nothing = { value: null, since: null, endedBy: null, lastRead: null, seconds: 0, unseenSeconds: 0 };

export function standingOf({ timeline, readiness, losses }: PairFacts): Standing {
  const { signal, steps } = readiness;
  const logged = steps.at(-1)?.value === 'yes' ? 'yes' : 'no';
  const change = spells(steps, logged).at(-1)?.start;
  if (signal === null || change === undefined) return { signal, ...nothing, losses: [], dropOuts: [] };
  const end = logged === 'yes' ? endOf(timeline, signal, change) : null;
  const isOut = end !== null && isGone(timeline, end);
  const since = isOut ? end : change;
  const { unobserved, seenUntil } = observationFor(timeline, null, signal);
  const isReadToEnd = isOut || !unobserved.some((u) => u.to >= timeline.to);
  const lastRead = isReadToEnd ? null : Math.max(since.time, seenUntil ?? since.time);
  const until = Math.max(lastRead ?? timeline.to, since.time);
  const absent = spells(track(timeline, null, 'partner-present'), 'no');
  return {
    signal,
    value: isOut ? 'no' : logged,
    since,
    endedBy: isOut ? null : end,
    lastRead,
    seconds: (until - since.time) / 1000,
    unseenSeconds: total(unobservedIn(timeline, null, signal, since.time, until)) / 1000,
    losses: losses.filter(({ event, kind }) => kind !== 'planned' && event !== change),
    dropOuts: absent.filter((s) => signal === 'partner-ready' && s.start.time > since.time && s.end !== null),
  };
}

/** True if nothing came back after it. */
function isGone(timeline: PairTimeline, { signal, time }: TimelineEvent): boolean {
  if (signal === 'partner-present') return true;
  const back = timeline.halves.some((h) => track(timeline, h, 'inserted').some((e) => e.time >= time));
  return signal === 'removed' && !back;
}

/**
 * The event after which a partner, or a second module, may be there no more though no line says so: a removal or a module no
 * longer seen, which lasts to the end, else the first work on a half that is not active. `null` where there is none, or where a
 * poll still read it after that.
 */
function endOf(
  timeline: PairTimeline,
  signal: NonNullable<Readiness['signal']>,
  since: TimelineEvent,
): TimelineEvent | null {
  const { events, coverage } = timeline;
  const reads = coverage.flatMap(({ stream }) => stream.reads.filter((r) => r.signal === signal));
  const readUntil = reads.reduce((most, r) => Math.max(most, r.to), since.time);
  const later = events.slice(countUntil(events, readUntil));
  const moved = later.findLast((e) => e.signal === 'removed' || e.signal === 'inserted');
  if (moved?.signal === 'removed') return moved;
  if (signal === 'partner-present') return null;
  const absent = spells(track(timeline, null, 'partner-present'), 'no').at(-1);
  if (absent !== undefined && absent.end === null && absent.start.time > readUntil) return absent.start;
  return later.find((e) => work.has(e.signal) && isOfPartner(timeline, e)) ?? null;
}

/** What leaves a ready partner behind it only where the log says so. */
const work: ReadonlySet<string> = new Set(['removed', 'inserted', 'restart', 'reflash-start', 'reflash-end']);

/** A removal leaves no partner, whichever half is out; what else happens to the active half does not touch its partner. */
function isOfPartner(timeline: PairTimeline, { signal, half, time }: TimelineEvent): boolean {
  return signal === 'removed' || half !== activeAt(timeline, time - 1);
}
