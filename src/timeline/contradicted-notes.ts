import type { ContradictedNote, Interval, NonEmpty, Source } from '../vocabulary.ts';
import { subtract } from './coverage.ts';
import { groupBy } from './groups.ts';
import type { TimelineRules } from './rules.ts';
import { type Sighting, sightingWith } from './sightings.ts';
import type { NamedStream } from './streams.ts';
import type { Resolved } from './subjects.ts';

/**
 * The absences that notes tell and readings speak against. `roles` are the sightings of roles, which name their half;
 * `streams` say where each poll has gaps.
 */
export function contradictedNotes(
  resolved: readonly Resolved[],
  roles: readonly Sighting[],
  streams: readonly NamedStream[],
  rules: TimelineRules,
): readonly ContradictedNote[] {
  const moves = resolved.filter(
    (s) => s.kind === 'note' && (s.signal === 'removed' || s.signal === 'inserted'),
  );
  if (moves.length === 0) return [];
  const readings = [...resolved, ...roles].filter((s) => s.kind === 'reading' && tellsOfPlace(s));
  const emptied = new Set(readings.filter(isEmpty).map((s) => s.stream));
  const inPlace = readings.filter((s) => emptied.has(s.stream) && !isEmpty(s));
  const gaps = new Map(
    streams.map(({ name, stream }) => [
      name,
      stream.gaps.map(({ before, after }) => ({ from: before.time, to: after.time })),
    ]),
  );
  return [...groupBy(moves, (m) => `${m.half}\n${m.stream}`).values()].flatMap((list) => {
    const removals = list.filter((m) => m.signal === 'removed');
    return list.flatMap((out, index) => {
      const back = list[index + 1];
      const isAbsence = out.signal === 'removed' && back?.signal === 'inserted';
      if (!isAbsence || out.half === null) return [];
      const absence = { from: out.time, to: back.earliest };
      const own = inPlace.filter((s) => isOf(s, out.half));
      const inPlaceThen = own.find((s) => isReadIn(s, absence, gaps.get(s.stream) ?? [], rules));
      const against = inPlaceThen ?? replacedElsewhen(own, removals, [out, back], rules);
      if (against === undefined) return [];
      const reason = inPlaceThen === undefined ? 'elsewhen' : 'in-place';
      const sources: NonEmpty<Source> = [out.sources[0], back.sources[0], against.sources[0]];
      return [{ half: out.half, ...absence, reason, sources }];
    });
  });
}

/**
 * Where polls look too seldom to have seen the absence: the replacement that the notes tell of, if readings show as many as
 * the notes have removals, each at another time by far, and the same module before and after the noted one.
 */
function replacedElsewhen(
  own: readonly Sighting[],
  removals: readonly Resolved[],
  [out, back]: readonly [Resolved, Resolved],
  { noteLagMs, boutMs }: TimelineRules,
): Sighting | undefined {
  const serials = own.filter((s) => s.signal === 'serial');
  const replaced = serials.filter((s, index) => index > 0 && s.value !== serials[index - 1]?.value);
  const other = replaced[removals.indexOf(out)];
  if (replaced.length !== removals.length || other === undefined) return undefined;
  const away = Math.abs(other.time - out.time);
  const isSame = serials.some((s) => s.time <= out.earliest && s.readUntil >= back.time);
  return isSame && away > noteLagMs && away <= boutMs ? other : undefined;
}

/**
 * The sightings, in which all that the same notes tell of a contradicted work is a note and nothing else: from its removal
 * to before their next. A command to switch over stays one.
 */
export function keptAsNotes(
  sightings: readonly Sighting[],
  contradicted: readonly ContradictedNote[],
): readonly Sighting[] {
  const starts = new Set(contradicted.map(({ sources: [out] }) => keyOfLine(out)));
  const wrong = new Set<string>();
  return sightings.map((s) => {
    if (s.kind !== 'note') return s;
    if (s.signal === 'removed' && starts.has(keyOfLine(s.sources[0]))) wrong.add(s.stream);
    else if (s.signal === 'removed') wrong.delete(s.stream);
    if (!wrong.has(s.stream) || s.signal === 'switchover-command') return s;
    return sightingWith(s, { signal: 'note', value: s.sources[0].text });
  });
}

function keyOfLine({ file, line }: Source): string {
  return `${file}\n${line}`;
}

/** What a place reads by which it can be told to be empty. */
function tellsOfPlace({ signal }: Sighting): boolean {
  return signal === 'serial' || signal === 'model' || signal === 'role' || signal === 'partner-present';
}

function isEmpty({ value }: Sighting): boolean {
  return value === null || value === 'none' || value === 'no';
}

function isOf(sighting: Sighting, half: string | null): boolean {
  if (sighting.signal === 'partner-present') return true;
  return ('half' in sighting ? sighting.half : sighting.subject.half) === half;
}

/** Read as in place before the absence, and surely in it: to its end, or for longer than a note comes late. */
function isReadIn(
  { time, readUntil, spacing }: Sighting,
  { from, to }: Interval,
  gaps: readonly Interval[],
  { noteLagMs }: TimelineRules,
): boolean {
  const until = Math.min(readUntil, to);
  if (time > from || (until < to && until - from <= noteLagMs)) return false;
  return subtract([{ from, to: until }], gaps).some((part) => part.to - part.from >= spacing);
}
