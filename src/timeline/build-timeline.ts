import {
  type ClockOffset,
  type Coverage,
  compareText,
  type ImportedFile,
  type Interval,
  isStateSignal,
  type NonEmpty,
  type Observation,
  type PairTimeline,
  type Signal,
  type Source,
  type StateSignal,
  type TimelineEvent,
} from '../vocabulary.ts';
import { contradictedNotes, keptAsNotes } from './contradicted-notes.ts';
import { deriveHappenings } from './derive.ts';
import { groupByTrack, keyOf } from './groups.ts';
import { gaugesOf } from './half-gauges.ts';
import { storyOf } from './half-story.ts';
import { breaksFor, mergeHappenings } from './happenings.ts';
import { loneSteps } from './lone-steps.ts';
import { mergeSightings } from './merge.ts';
import { nameHalves } from './name-halves.ts';
import { newestStamp } from './newest-stamp.ts';
import { observations } from './observation.ts';
import { logComparison } from './one-log.ts';
import { byCause } from './order.ts';
import { type RoleEvidence, roleStepsOf } from './role-steps.ts';
import { readRoles } from './roles.ts';
import type { TimelineRules } from './rules.ts';
import { partsByPair, sightingsOf } from './seen-parts.ts';
import type { Sighting } from './sightings.ts';
import { silentParts } from './silent-parts.ts';
import { sitesOf, zonesOf } from './sites.ts';
import { type StateStep, toSteps } from './states.ts';
import { type NamedCoverage, streamsByPair, withLogs } from './streams.ts';
import { aboutHalf, type Resolved, resolveSubjects } from './subjects.ts';

/**
 * One timeline per pair from all files, pairs in the order of their names. The order of the files, a file given twice
 * and overlapping exports change nothing. `offsets` say which clocks are off. Source: design.md, section 2.
 */
export function buildTimeline(
  files: readonly ImportedFile[],
  offsets: readonly ClockOffset[],
  rules: TimelineRules,
): readonly PairTimeline[] {
  return [...timelinesInTurn(files, offsets, rules)];
}

/** The same, each pair's made when it is asked for: who needs one at a time holds one. */
export function* timelinesInTurn(
  files: readonly ImportedFile[],
  offsets: readonly ClockOffset[],
  rules: TimelineRules,
): Generator<PairTimeline> {
  const parts = partsByPair(files, offsets);
  const coverage = streamsByPair(files);
  const sites = sitesOf(files);
  const zones = zonesOf(files);
  const compare = logComparison(files);
  const silent = silentParts(files, compare);
  for (const [pair, list] of [...coverage.entries()].sort(([a], [b]) => compareText(a, b))) {
    // Pair by pair: what is made of all sightings on the way is needed for one pair at a time.
    const told = sightingsOf(parts.get(pair) ?? []);
    yield {
      ...buildPair(pair, told, withLogs(list, told, silent, compare), files, rules),
      newest: newestStamp(list, offsets),
      site: sites.get(pair) ?? null,
      zone: zones.get(pair) ?? null,
    };
  }
}

function buildPair(
  pair: string,
  told: readonly Sighting[],
  coverage: NonEmpty<NamedCoverage>,
  files: readonly ImportedFile[],
  rules: TimelineRules,
): Omit<PairTimeline, 'site' | 'zone' | 'newest'> {
  const halves = nameHalves(told, coverage);
  const first = placed(told, halves, rules);
  const contradicted = contradictedNotes(
    first.resolved,
    told.filter((s) => s.signal === 'role'),
    coverage,
    rules,
  );
  const evidence = contradicted.length === 0 ? first : placed(keptAsNotes(told, contradicted), halves, rules);
  const { sightings, roles, resolved } = evidence;
  const grouped = groupByTrack(resolved);
  const events = eventsOf(pair, evidence, grouped, rules);
  const span = spanOf(coverage);
  const observed = observations(coverage, span);
  const observation = observationsOf(grouped, sightings, observed);
  return {
    pair,
    halves,
    events,
    tracks: groupByTrack(events),
    gauges: gaugesOf(pair, files, roles, halves),
    coverage,
    observation,
    contradicted,
    ...(observation.get(keyOf(null, 'partner-ready')) ??
      observation.get(keyOf(null, 'partner-present')) ??
      observed(sightings)),
    ...span,
  };
}

/** The sightings with who held which role, and which half each is about. */
function placed(
  sightings: readonly Sighting[],
  halves: readonly string[],
  rules: TimelineRules,
): Omit<RoleEvidence, 'happened'> {
  const roles = readRoles(sightings, halves, rules);
  return { sightings, roles, halves, resolved: resolveSubjects(sightings, roles, halves, rules) };
}

/** From the first to the last row that was read of a pair; of a journal, no matter what unit its rows are of. Notes alone observe nothing. */
function spanOf(coverage: readonly Coverage[]): Interval {
  const logs = coverage.filter((c) => c.stream.kind !== 'note');
  const spans = (logs.length > 0 ? logs : coverage).map(({ span, stream }) =>
    stream.kind === 'entry' ? span : { from: stream.first.time, to: stream.last.time },
  );
  return { from: Math.min(...spans.map((s) => s.from)), to: Math.max(...spans.map((s) => s.to)) };
}

/** What was observed of each state of each half, and of the pair. */
function observationsOf(
  grouped: Grouped,
  sightings: readonly Sighting[],
  observed: ReturnType<typeof observations>,
): ReadonlyMap<string, Observation> {
  const ofRoles = sightings
    .filter((s) => s.signal === 'role' && s.subject.half !== null)
    .map((s) => aboutHalf(s, s.subject.half));
  return new Map(
    [...grouped, ...groupByTrack(ofRoles)].flatMap(([key, list]) =>
      list[0] !== undefined && isStateSignal(list[0].signal) ? [[key, observed(list)] as const] : [],
    ),
  );
}

type Grouped = ReadonlyMap<string, readonly Resolved[]>;

function eventsOf(
  pair: string,
  evidence: Omit<RoleEvidence, 'happened'>,
  grouped: Grouped,
  rules: TimelineRules,
): readonly TimelineEvent[] {
  const { roles, halves } = evidence;
  const derived = halves.flatMap((half) => deriveHappenings(storyOf(half, evidence, grouped, rules), rules));
  const happened = mergeHappenings(grouped, derived, rules);
  const absent = (grouped.get(keyOf(null, 'partner-present')) ?? []).filter(
    ({ kind, value }) => kind !== 'note' && value === 'no',
  );
  const states = stateKeys(grouped).flatMap(({ half, signal, list }) => {
    const breaks = breaksFor(half, signal, happened, absent, roles);
    const merged = (): readonly StateStep[] => toSteps(mergeSightings(list, rules), breaks);
    return loneSteps(list, breaks) ?? merged().map((step) => toEvent(pair, half, signal, step));
  });
  const ofRoles = [...roleStepsOf({ ...evidence, happened }, rules)].flatMap(([half, steps]) =>
    steps.map((step) => toEvent(pair, half, 'role', step)),
  );
  const occurred = happened.map(({ half, signal, item }) =>
    toEvent(pair, half, signal, { ...item, before: null, initial: false, concluded: false }),
  );
  return [...states, ...ofRoles, ...occurred].sort(byCause);
}

function toEvent(
  pair: string,
  half: string | null,
  signal: Signal,
  step: Omit<StateStep, 'sources'> & { readonly sources: NonEmpty<Source> },
): TimelineEvent {
  const { kind, time, earliest, resolution, value, before, initial, concluded, sources } = step;
  return {
    kind,
    time,
    earliest,
    pair,
    half,
    signal,
    value,
    before,
    resolution,
    initial,
    concluded,
    sources: bySource(sources),
  };
}

/** Each line once, in an order that does not depend on the order of the files. */
function bySource(sources: NonEmpty<Source>): NonEmpty<Source> {
  if (sources.length === 1) return sources;
  const seen = new Map(sources.map((s) => [`${s.file}\n${s.line}`, s]));
  const [first, ...rest] = [...seen.values()].sort((a, b) => compareText(a.file, b.file) || a.line - b.line);
  return first === undefined ? sources : [first, ...rest];
}

function stateKeys(
  grouped: Grouped,
): readonly { half: string | null; signal: StateSignal; list: readonly Resolved[] }[] {
  return [...grouped.values()].flatMap((list) => {
    const first = list[0];
    if (first === undefined) return [];
    const { half, signal } = first;
    return isStateSignal(signal) ? [{ half, signal, list }] : [];
  });
}
