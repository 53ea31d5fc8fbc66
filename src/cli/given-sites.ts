import type { Settings } from '../bundle/inside.ts';
import {
  type BriefSite,
  type FileSource,
  InputError,
  readFigures,
  type SitesGiven,
  type StoredContent,
  siteGroups,
  storedContent,
} from '../pipeline.ts';
import type { SiteFigures } from '../vocabulary.ts';
import { clocksOf, limitsOf } from './command.ts';
import { inBatches } from './in-batches.ts';
import { platform } from './platform.ts';

/** What is read together, and what of its figures is asked for. */
export interface SiteTask {
  readonly sources: readonly FileSource[];
  readonly settings: Settings;
}

/** The figures of a site, whole or in brief, and where its first file stands among all that were given. */
export interface PlacedSite<Site extends BriefSite> extends SitesGiven {
  readonly figures: Site;
  readonly place: number;
}

/** How sites are read, and what is kept of their figures. */
export interface SiteReader<Site extends BriefSite> {
  /** Makes the figures of what is read together, and may do so for several at once; in the order of the tasks. */
  readonly read: (tasks: readonly SiteTask[]) => Promise<readonly Site[]>;
  readonly keep: (site: SiteFigures) => Site;
}

type Timeline = Extract<StoredContent, { readonly kind: 'timeline' }>;

/**
 * The figures of everything that was given, in the order of the files: timelines are read site by site, logs all together with
 * the timelines beside them, figures as they are.
 */
export async function givenSites<Site extends BriefSite>(
  sources: readonly FileSource[],
  settings: Settings,
  { read, keep }: SiteReader<Site>,
): Promise<readonly PlacedSite<Site>[]> {
  const contents = await contentsOf(sources);
  const places = [...sources.keys()];
  const toRead = places.filter((place) => contents[place]?.kind !== 'figures');
  const groups = groupsOf(toRead, contents);
  const tasks = groups.map((group) => ({
    sources: group.flatMap((place) => sources.slice(place, place + 1)),
    settings,
  }));
  const figures = await read(tasks);
  const made = figures.map((own, index): PlacedSite<Site> => {
    const place = groups[index]?.[0] ?? 0;
    return { name: sources[place]?.name ?? '', isStored: false, figures: own, place };
  });
  const stored: PlacedSite<Site>[] = [];
  for (const place of places) {
    const source = sources[place];
    if (source === undefined || contents[place]?.kind !== 'figures') continue;
    for (const own of await sitesIn(source, settings, keep))
      stored.push({ name: source.name, isStored: true, figures: own, place });
  }
  return [...made, ...stored].sort((a, b) => a.place - b.place);
}

/** What each file holds; what they say alike of a pair is kept once. */
async function contentsOf(sources: readonly FileSource[]): Promise<readonly StoredContent[]> {
  const known = new Map<string, Timeline['places'][number]>();
  return inBatches(sources, async (source) => {
    const content = await storedContent(source).catch((error: unknown): StoredContent => {
      // Why it can not be read is said where it is read.
      if (error instanceof InputError) return { kind: 'timeline', places: [] };
      throw error;
    });
    if (content.kind !== 'timeline') return content;
    const places = content.places.map((place) => {
      const key = [place.site, place.unitSite, place.pair].join('\n');
      const first = known.get(key) ?? place;
      known.set(key, first);
      return first;
    });
    return { kind: 'timeline', places };
  });
}

/** What is read together, by the places of the files: a log may be of any site, and what it says bears on what others mean. */
function groupsOf(
  toRead: readonly number[],
  contents: readonly StoredContent[],
): readonly (readonly number[])[] {
  const timelines = toRead.flatMap((place) => {
    const content = contents[place];
    return content?.kind === 'timeline' ? [content.places] : [];
  });
  if (timelines.length < toRead.length) return [toRead];
  return siteGroups(timelines).map((group) => group.flatMap((index) => toRead.slice(index, index + 1)));
}

/** The sites of a file of figures; what keeps it from being read stands in place of them. */
async function sitesIn<Site>(
  source: FileSource,
  settings: Settings,
  keep: (site: SiteFigures) => Site,
): Promise<readonly Site[]> {
  const sites: Site[] = [];
  try {
    await readFigures(source, platform, (site) => {
      refuseOtherRules(source.name, site, settings);
      sites.push(keep(site));
    });
    return sites;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return [keep(failed([error], settings))];
  }
}

/** Nothing but what could not be read. */
export function failed(failures: readonly InputError[], settings: Settings): SiteFigures {
  const { rules } = limitsOf(settings);
  return { holdMs: rules.holdMs, ...clocksOf(settings), files: [], failures, pairs: [] };
}

/** Throws InputError for figures that were made by other rules than those of this run: they can not be compared. */
function refuseOtherRules(name: string, { holdMs, align, reference }: SiteFigures, settings: Settings): void {
  const asked = { holdMs: limitsOf(settings).rules.holdMs, ...clocksOf(settings) };
  if (holdMs !== asked.holdMs)
    throw new InputError(
      name,
      `its figures were made with --hold ${holdMs / 1000}, not ${asked.holdMs / 1000}.`,
      `Give --hold ${holdMs / 1000}, or make them again.`,
    );
  if (align !== asked.align)
    throw new InputError(
      name,
      `its figures were made ${align ? 'with' : 'without'} --align-clocks.`,
      `${align ? 'Give that option' : 'Leave that option out'}, or make them again.`,
    );
  if (reference !== asked.reference)
    throw new InputError(
      name,
      reference === null
        ? 'its figures were made without --reference.'
        : `its figures were made with --reference ${reference}.`,
      `${reference === null ? 'Leave that option out' : 'Give that option'}, or make them again.`,
    );
}
