import { type BriefSite, InputError, withoutRepeated } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import type { SiteFigures } from '../vocabulary.ts';
import { NothingReadable, sayRefusal } from './command.ts';
import { failed, givenSites, type PlacedSite, type SiteTask } from './given-sites.ts';
import type { OpenedFiles } from './open-given.ts';
import { progressTo } from './progress.ts';
import { readSite } from './read-site.ts';
import { isOnDisk, readOnThreads } from './site-threads.ts';
import type { Streams } from './streams.ts';

/**
 * The figures of all that was opened, of each site what `keep` keeps; what could not be read is among them, and told on stderr, a
 * line each. Throws if nothing was readable.
 */
export async function readSites<Site extends BriefSite>(
  opened: OpenedFiles,
  { stderr, newThread }: Streams,
  keep: (site: SiteFigures) => Site,
): Promise<readonly PlacedSite<Site>[]> {
  const { sources, settings, phrasebook, notOpened, notices, reports } = opened;
  const progress = progressTo(stderr, sources);
  const read = async (tasks: readonly SiteTask[]): Promise<readonly Site[]> => {
    if (newThread !== undefined && tasks.length > 1 && tasks.every(isOnDisk))
      return readOnThreads(tasks, { newThread, keep, onFile: progress.onFile });
    const sites: Site[] = [];
    for (const task of tasks) sites.push(keep(await readSite(task, { phrasebook, ...progress })));
    return sites;
  };
  const given = await givenSites(sources, settings, { read, keep });
  progress.end();
  const { kept, failures } = withoutRepeated(given);
  const refused = (errors: readonly InputError[]): PlacedSite<Site> => {
    return { name: '', isStored: false, figures: keep(failed(errors, settings)), place: 0 };
  };
  const sites = [refused(notOpened), ...kept, refused(failures)];
  const all = sites.flatMap((site) => site.figures.failures);
  for (const line of [...all.map(sayFailure), ...notices]) stderr.write(`${terminal(line)}\n`);
  if (sites.every(({ figures }) => figures.files.length === 0))
    throw new NothingReadable(all.length + reports);
  return sites;
}

function sayFailure({ where, what, fix, kind, setting }: SiteFigures['failures'][number]): string {
  return sayRefusal(new InputError(where, what, fix, kind, setting));
}
