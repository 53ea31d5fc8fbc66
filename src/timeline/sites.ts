import { withTopics } from '../changes.ts';
import type { ImportedFile, Subject } from '../vocabulary.ts';

/**
 * The files with pairs of one name at several sites told apart: `RO1` becomes `RO1 at Marrow Bay` and `RO1 at Gull Point`.
 * A unit that names no site is at the one its phrasebook's other units of that pair name, else at the phrasebook's own;
 * where that is not known either, the pair keeps its bare name.
 */
export function pairsBySite(files: readonly ImportedFile[]): readonly ImportedFile[] {
  const named = sitesNamed(files);
  const siteOf = ({ site }: ImportedFile, subject: Subject): string | null => {
    const [only, ...more] = named.get(`${site ?? ''}\n${subject.pair}`) ?? [];
    return subject.site ?? (more.length === 0 ? only : undefined) ?? site;
  };
  const sites = new Map<string, Set<string>>();
  for (const file of files)
    for (const { subject } of file.streams) {
      const site = siteOf(file, subject);
      if (site !== null) add(sites, subject.pair, site);
    }
  const isShared = ({ pair }: Subject): boolean => pair !== '' && (sites.get(pair)?.size ?? 0) > 1;
  return files.map((file) => {
    if (!file.streams.some(({ subject }) => isShared(subject))) return file;
    const { streams, changes, gauges } = file;
    const toldApart = <T extends { readonly subject: Subject }>(item: T, unit: Subject = item.subject): T => {
      const site = siteOf(file, unit);
      if (site === null || !isShared(item.subject)) return item;
      return { ...item, subject: { ...item.subject, pair: `${item.subject.pair} at ${site}` } };
    };
    return {
      ...file,
      streams: streams.map((stream) => toldApart(stream)),
      // What a change is about may be another half, or the pair: its stream has the unit that names the site.
      changes: withTopics(changes, (topic) => toldApart(topic, streams[topic.stream]?.subject)),
      gauges: gauges.map((series) => toldApart(series)),
    };
  });
}

/** The sites that units name themselves, by the phrasebook they were read with and their pair. */
function sitesNamed(files: readonly ImportedFile[]): ReadonlyMap<string, ReadonlySet<string>> {
  const named = new Map<string, Set<string>>();
  for (const { site, streams } of files)
    for (const { subject } of streams)
      if (subject.site !== undefined) add(named, `${site ?? ''}\n${subject.pair}`, subject.site);
  return named;
}

function add(sets: Map<string, Set<string>>, key: string, value: string): void {
  const set = sets.get(key);
  if (set === undefined) sets.set(key, new Set([value]));
  else set.add(value);
}

/** The site of each pair: what a unit of it names itself, else that of the phrasebook it was read with. */
export function sitesOf(files: readonly ImportedFile[]): ReadonlyMap<string, string> {
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

/** The time zone of each pair: the first that its files' stamps were read in, or that is named beside them; UTC says nothing of a site. */
export function zonesOf(files: readonly ImportedFile[]): ReadonlyMap<string, string> {
  const zones = new Map<string, string>();
  for (const { input, zone, streams } of files) {
    const named = input.zone === 'UTC' ? (zone ?? 'UTC') : input.zone;
    if (named === 'UTC') continue;
    for (const { subject } of streams) if (!zones.has(subject.pair)) zones.set(subject.pair, named);
  }
  return zones;
}
