import {
  type Coverage,
  compareText,
  type ImportedFile,
  isStateSignal,
  type NonEmpty,
  type PairTimeline,
  type Signal,
  type Source,
  type StateSignal,
  type TimelineEvent,
} from '../vocabulary.ts';
import { observe } from './coverage.ts';
import { deriveHappenings } from './derive.ts';
import { groupBy, keyOf } from './groups.ts';
import { gaugesOf } from './half-gauges.ts';
import { breaksFor, mergeHappenings } from './happenings.ts';
import { type Merged, mergeSightings } from './merge.ts';
import { byCause } from './order.ts';
import { type Roles, readRoles } from './roles.ts';
import type { TimelineRules } from './rules.ts';
import { type Sighting, sightingsByPair } from './sightings.ts';
import { type StateStep, toSteps } from './states.ts';
import { type Resolved, resolveSubjects } from './subjects.ts';

/**
 * One timeline per pair from all files, pairs in the order of their names. The order of the files, a file given twice
 * and overlapping exports change nothing. Source: design.md, section 2.
 */
export function buildTimeline(files: readonly ImportedFile[], rules: TimelineRules): readonly PairTimeline[] {
  const sightings = sightingsByPair(files);
  const coverage = coverageByPair(files);
  const sites = sitesOf(files);
  return [...coverage.entries()]
    .sort(([a], [b]) => compareText(a, b))
    .map(([pair, list]) => ({
      ...buildPair(pair, sightings.get(pair) ?? [], list, files, rules),
      site: sites.get(pair) ?? null,
    }));
}

function coverageByPair(files: readonly ImportedFile[]): ReadonlyMap<string, NonEmpty<Coverage>> {
  const byPair = new Map<string, [Coverage, ...Coverage[]]>();
  for (const file of files) {
    for (const stream of file.streams) {
      // A unit that no pattern knows is counted where it was read; it is no pair.
      if (stream.subject.pair === '') continue;
      const item = { file: file.input.file, stream };
      const list = byPair.get(stream.subject.pair);
      if (list === undefined) byPair.set(stream.subject.pair, [item]);
      else list.push(item);
    }
  }
  return byPair;
}

function buildPair(
  pair: string,
  sightings: readonly Sighting[],
  coverage: NonEmpty<Coverage>,
  files: readonly ImportedFile[],
  rules: TimelineRules,
): Omit<PairTimeline, 'site'> {
  const halves = nameHalves(sightings, coverage);
  const roles = readRoles(sightings, halves, rules);
  const events = eventsOf(pair, sightings, roles, halves, rules);
  return {
    pair,
    halves,
    events,
    tracks: groupBy(events, (e) => keyOf(e.half, e.signal)),
    gauges: gaugesOf(pair, files, roles, halves),
    coverage,
    ...observe(coverage),
    from: Math.min(...coverage.map(({ stream }) => stream.first.time)),
    to: Math.max(...coverage.map(({ stream }) => stream.last.time)),
  };
}

/** The slot names the logs give; where they name fewer than two, `1` and `2` fill in. */
function nameHalves(sightings: readonly Sighting[], coverage: readonly Coverage[]): readonly string[] {
  const names = [...sightings.map((s) => s.subject.half), ...coverage.map((c) => c.stream.subject.half)];
  const named = [...new Set(names.filter((name) => name !== null))].sort(compareText);
  for (const spare of ['1', '2']) if (named.length < 2 && !named.includes(spare)) named.push(spare);
  return named;
}

type Grouped = ReadonlyMap<string, readonly Resolved[]>;

function eventsOf(
  pair: string,
  sightings: readonly Sighting[],
  roles: Roles,
  halves: readonly string[],
  rules: TimelineRules,
): readonly TimelineEvent[] {
  const grouped = groupBy(resolveSubjects(sightings, roles, halves, rules), (s) => keyOf(s.half, s.signal));
  const derived = halves.flatMap((half) => deriveHappenings(storyOf(half, grouped, rules), rules));
  const happened = mergeHappenings(grouped, derived, rules);
  const states = stateKeys(grouped).flatMap(({ half, signal, list }) =>
    toSteps(mergeSightings(list, rules), breaksFor(half, signal, happened, roles), lostValue(signal)).map(
      (step) => toEvent(pair, half, signal, step),
    ),
  );
  const ofRoles = [...roles.steps.entries()].flatMap(([half, steps]) =>
    steps.map((step) => toEvent(pair, half, 'role', step)),
  );
  const occurred = happened.map(({ half, signal, item }) =>
    toEvent(pair, half, signal, { ...item, before: null, initial: false }),
  );
  return [...states, ...ofRoles, ...occurred].sort(byCause);
}

function storyOf(
  half: string,
  grouped: Grouped,
  rules: TimelineRules,
): Parameters<typeof deriveHappenings>[0] {
  const steps = (signal: StateSignal, of: string | null): readonly StateStep[] =>
    toSteps(mergeSightings(grouped.get(keyOf(of, signal)) ?? [], rules), [], null);
  const serial = steps('serial', half);
  return {
    half,
    identity: serial.some((s) => s.value !== null) ? serial : steps('model', half),
    firmware: steps('firmware', half),
    presence: steps('partner-present', null),
    logged: logged((signal) => mergeSightings(grouped.get(keyOf(half, signal)) ?? [], rules)),
  };
}

/** Merges what was logged of each happening once. */
function logged(merge: (signal: Signal) => readonly Merged[]): (signal: Signal) => readonly Merged[] {
  const known = new Map<Signal, readonly Merged[]>();
  return (signal) => {
    const merged = known.get(signal) ?? merge(signal);
    known.set(signal, merged);
    return merged;
  };
}

function lostValue(signal: StateSignal): string | null {
  return signal === 'partner-ready' ? 'no' : null;
}

function toEvent(
  pair: string,
  half: string | null,
  signal: Signal,
  step: Omit<StateStep, 'sources'> & { readonly sources: NonEmpty<Source> },
): TimelineEvent {
  const { time, earliest, resolution, value, before, initial, sources } = step;
  return {
    time,
    earliest,
    pair,
    half,
    signal,
    value,
    before,
    resolution,
    initial,
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

/** The site of each pair: what a unit of it names itself, else that of the phrasebook it was read with. */
function sitesOf(files: readonly ImportedFile[]): ReadonlyMap<string, string> {
  const named = new Map<string, string>();
  const ofBooks = new Map<string, string>();
  for (const { streams, site } of files) {
    for (const { subject } of streams) {
      if (subject.site !== undefined && !named.has(subject.pair)) named.set(subject.pair, subject.site);
      if (site !== null && !ofBooks.has(subject.pair)) ofBooks.set(subject.pair, site);
    }
  }
  return new Map([...ofBooks, ...named]);
}
