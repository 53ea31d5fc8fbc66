import type { NonEmpty, Source } from '../vocabulary.ts';
import type { Happened } from './happenings.ts';
import { type Merged, mergeSightings } from './merge.ts';
import { type Flip, otherHalf, type Roles } from './roles.ts';
import type { TimelineRules } from './rules.ts';
import { byTime, type Sighting, sightingWith } from './sightings.ts';
import { noBreaks, type StateStep, toSteps } from './states.ts';
import type { Resolved } from './subjects.ts';
import { countUntil } from './tracks.ts';

/** What the roles of the halves are read off. */
export interface RoleEvidence {
  readonly sightings: readonly Sighting[];
  /** The same, each with the half it is about. */
  readonly resolved: readonly Resolved[];
  readonly roles: Roles;
  readonly happened: readonly Happened[];
  readonly halves: readonly string[];
}

const identity: ReadonlySet<string> = new Set(['serial', 'model', 'firmware']);

/**
 * The steps of each half's role: what lines state of it, what a logged switchover or exchanged identities make of it, and
 * `none` while its module is out. Where no line ever states the role of one half, it is concluded from `active` or `standby`
 * of the other, and marked. Source: design.md, section 2, Roles are what the lines say.
 */
export function roleStepsOf(
  evidence: RoleEvidence,
  rules: TimelineRules,
): ReadonlyMap<string, readonly StateStep[]> {
  const said = new Map(evidence.halves.map((half) => [half, saidOf(half, evidence, rules)]));
  return new Map(
    evidence.halves.map((half) => {
      const own = said.get(half) ?? [];
      const moves = movesOf(half, evidence).flatMap((h) => asMoved(h, own, rules));
      // Within one stamp what a line states comes after the move, however wide the bounds of that.
      if (own.length > 0)
        return [
          half,
          toSteps(
            [...moves, ...own].sort((a, b) => a.time - b.time),
            noBreaks,
          ),
        ];
      const others = toSteps(said.get(otherHalf(evidence.halves, half)) ?? [], noBreaks);
      return [half, concluded(others, half, evidence)];
    }),
  );
}

/** The removals and insertions of a half in the order of time, within one stamp the removal first. */
function movesOf(half: string, { happened }: RoleEvidence): readonly Happened[] {
  const isInsertion = ({ signal }: Happened): number => Number(signal === 'inserted');
  return happened
    .filter((h) => h.half === half && (h.signal === 'removed' || h.signal === 'inserted'))
    .sort((a, b) => a.item.time - b.item.time || isInsertion(a) - isInsertion(b));
}

/** What the lines say of a half's role, in the order of time. */
function saidOf(half: string, evidence: RoleEvidence, rules: TimelineRules): readonly Merged[] {
  const { sightings, resolved, roles } = evidence;
  const stated = sightings.filter((s) => s.signal === 'role' && s.subject.half === half);
  const own = mergeSightings([...stated, ...byAddress(half, resolved)], rules);
  const passed = roles.flips.flatMap((flip, index) => {
    const next = roles.flips[index + 1]?.time ?? Number.POSITIVE_INFINITY;
    if (flip.from === 'role' || saysItself(own, flip, next) || isPolled(stated, flip)) return [];
    return [asPassed(flip, half)];
  });
  const before = passed[0] === undefined || own.length > 0 ? [] : beforeFirst(passed[0], evidence, half);
  return [...before, ...own, ...passed].sort(byTime);
}

/** A row that names a role and gives an identity says that the half it is about holds that role. */
function byAddress(half: string, resolved: readonly Resolved[]): readonly Sighting[] {
  const named = resolved.filter(
    (s) =>
      s.subject.role !== null &&
      s.subject.half === null &&
      s.half === half &&
      s.kind === 'reading' &&
      s.value !== null &&
      identity.has(s.signal),
  );
  return named.map((s) => sightingWith(s, { signal: 'role', value: s.subject.role }));
}

/** Where only switchovers are logged, the halves are called after who was active when the log began: that is their first role. */
function beforeFirst(first: Merged, { roles, sightings }: RoleEvidence, half: string): readonly Merged[] {
  const begin = sightings[0];
  if (begin === undefined || roles.first === null || begin.time >= first.earliest) return [];
  if (sightings.some((s) => s.signal === 'role')) return [];
  const value = half === roles.first ? 'active' : 'standby';
  return [{ ...first, value, time: begin.time, earliest: begin.time, sources: begin.sources, initial: true }];
}

/** The lines say what became of this half's role before the roles pass again, so nothing is added for it. */
function saysItself(own: readonly Merged[], flip: Flip, next: number): boolean {
  return (own[countUntil(own, flip.earliest, 'before')]?.time ?? next) < next;
}

/** A poll goes on reading this half's role after the flip: what it does not show did not happen. */
function isPolled(stated: readonly Sighting[], flip: Flip): boolean {
  return stated.some(
    (s) => s.kind === 'reading' && s.time < flip.time && s.readUntil > flip.time + s.spacing,
  );
}

function asPassed({ time, earliest, resolution, toHalf, sources }: Flip, half: string): Merged {
  const value = half === toHalf ? 'active' : 'standby';
  return { ...plain(sources), kind: 'entry', time, earliest, resolution, value, readUntil: time };
}

/** A half whose module is out has the role none; what the next one has is not known until a line states it. */
function asMoved(
  { signal, item }: Happened,
  own: readonly Merged[],
  rules: TimelineRules,
): readonly Merged[] {
  if (signal === 'removed') return [{ ...item, value: 'none', readUntil: item.time }];
  if (signal !== 'inserted') return [];
  const last = own.findLast((o) => o.time <= item.time);
  const isStated = last !== undefined && last.value !== 'none' && last.time > item.time - rules.lagMs;
  if (isStated && last.time > item.earliest - rules.lagMs) return [];
  // A poll that goes on to read the place says what it holds.
  const isRead = last !== undefined && last.readUntil > item.time;
  return [{ ...item, value: isRead ? last.value : null, readUntil: item.time }];
}

function plain(
  sources: NonEmpty<Source>,
): Pick<Merged, 'initial' | 'resumed' | 'streams' | 'sources' | 'printed' | 'spread'> {
  return { initial: false, resumed: false, streams: new Set(), sources, printed: null, spread: 0 };
}

const opposite: Readonly<Record<string, string>> = { active: 'standby', standby: 'active' };

/** What the other half's steps let one conclude, while this half's module is in. */
function concluded(others: readonly StateStep[], half: string, evidence: RoleEvidence): readonly StateStep[] {
  const moves = movesOf(half, evidence).map(({ signal, item }) => ({ signal, item, time: item.time }));
  const isOut = (time: number): boolean => moves[countUntil(moves, time) - 1]?.signal === 'removed';
  const reasoned = others
    .filter((step) => !isOut(step.time))
    .map((step) => ({ ...step, value: opposite[step.value ?? ''] ?? null, concluded: true }));
  const gone = moves.flatMap(({ signal, item }) =>
    toSteps([{ ...item, value: signal === 'removed' ? 'none' : null }], noBreaks),
  );
  const steps: StateStep[] = [];
  for (const step of [...reasoned, ...gone].sort(byTime)) {
    const last = steps.at(-1);
    if (last?.value === step.value || (last === undefined && step.value === null)) continue;
    steps.push({ ...step, before: last?.value ?? null, initial: step.initial && last === undefined });
  }
  return steps;
}
