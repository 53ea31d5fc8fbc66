import { InputError, reviewSites, withoutRepeated } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import { figuresFile } from '../report/figures-parquet.ts';
import { fleetJson } from '../report/fleet-json.ts';
import { fleetReports } from '../report/fleet-reports.ts';
import { fleetText } from '../report/fleet-text.ts';
import { shownZone } from '../report/shown-zone.ts';
import type { Fleet, SiteFigures } from '../vocabulary.ts';
import {
  type CommonOptions,
  cliCommand,
  clocksOf,
  limitsOf,
  NothingReadable,
  type Status,
  sayRefusal,
} from './command.ts';
import { failed, givenSites, type PlacedSite, type SiteTask } from './given-sites.ts';
import { type OpenedFiles, openGiven } from './open-given.ts';
import { painterFor } from './paint.ts';
import { digestOf } from './platform.ts';
import { progressTo } from './progress.ts';
import { readSite } from './read-sites.ts';
import type { Streams } from './streams.ts';
import { parquetIsBinary, writeReports, writeWhole } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

interface FleetOptions extends CommonOptions {
  readonly group?: Fleet['by'] | undefined;
  readonly swaps?: number | undefined;
  readonly readyDays?: number | undefined;
  readonly format?: 'parquet' | undefined;
  readonly out?: string | undefined;
}

const usualSwaps = 10;

/** `fleet`: compares all pairs, and the losses and sync times of models, firmware or sites. */
export const fleetCommand = cliCommand<FleetOptions>({
  name: 'fleet',
  says: 'Compare all pairs: which lose their partner more often, which sync slower, which are ready for a swap?',
  options: {
    group: {
      kind: 'choice',
      takes: 'by',
      says: 'group losses and sync times by',
      choices: ['model', 'firmware', 'site'],
    },
    swaps: { kind: 'whole number', takes: 'count', says: 'number of swaps to forecast (10)' },
    readyDays: {
      kind: 'whole number',
      takes: 'days',
      says: 'days with a ready partner, without a break, before a swap (1)',
    },
    format: {
      kind: 'choice',
      takes: 'format',
      says: 'write the figures of each pair to the file of --out, to be read in place of the logs',
      choices: ['parquet'],
    },
    out: { kind: 'text', takes: 'folder', says: 'write reports to this folder (HTML, Markdown, JSON, CSV)' },
  },
  examples: [
    'fleet exports/ --phrasebook site.yaml',
    'fleet site-a.zip site-b.zip --group site --swaps 40 --json',
  ],
  run: fleetFiles,
});

async function fleetFiles(
  paths: readonly string[],
  options: FleetOptions,
  streams: Streams,
): Promise<Status> {
  if (options.format === 'parquet' && options.out === undefined) throw parquetIsBinary();
  const opened = await openGiven(paths, options, [streams.stdout, streams.stderr], undefined);
  const { settings } = opened;
  const sites = await readGiven(opened, streams);
  if (options.format === 'parquet') return writeFigures(sites, options, opened);
  const { group, swaps, readyDays } = options;
  const places = new Map(opened.sources.map(({ name }, place) => [name, place]));
  const reviewed = reviewSites(
    sites.map(({ figures }) => figures),
    {
      by: group ?? 'firmware',
      swaps: swaps ?? usualSwaps,
      readyDays,
      limits: limitsOf(settings),
      align: clocksOf(settings).align,
      placeOf: ({ file, container }, site) => places.get(container?.file ?? file) ?? sites[site]?.place ?? 0,
    },
  );
  const zone = shownZone(settings.zone, reviewed.inputs);
  const asked = { zone, version: STEADYPAIR_VERSION };
  const reports =
    options.out === undefined
      ? []
      : await writeReports(options.out, await fleetReports(reviewed, asked), opened.read);
  const shown = { zone, paint: painterFor(streams.stdout), reports };
  streams.stdout.write(options.json === true ? fleetJson(reviewed) : fleetText(reviewed, shown));
  return statusOf(reviewed);
}

/** The figures of all that was opened; what could not be read is among them, and told. Throws if nothing was readable. */
async function readGiven(opened: OpenedFiles, { stderr }: Streams): Promise<readonly PlacedSite[]> {
  const { sources, settings, phrasebook, notOpened, notices, reports } = opened;
  const progress = progressTo(stderr, sources);
  const read = async (tasks: readonly SiteTask[]): Promise<readonly SiteFigures[]> => {
    const figures: SiteFigures[] = [];
    for (const task of tasks) figures.push(await readSite(task, { phrasebook, ...progress }));
    return figures;
  };
  const given = await givenSites(sources, settings, read);
  progress.end();
  const { kept, failures } = withoutRepeated(given);
  const sites = [placed(notOpened), ...kept, placed(failures)];
  const all = sites.flatMap((site) => site.figures.failures);
  const told = all.map(({ where, what, fix, kind, setting }) =>
    sayRefusal(new InputError(where, what, fix, kind, setting)),
  );
  for (const line of [...told, ...notices]) stderr.write(`${terminal(line)}\n`);
  if (sites.every(({ figures }) => figures.files.length === 0))
    throw new NothingReadable(all.length + reports);
  return sites;

  function placed(refused: readonly InputError[]): PlacedSite {
    return { name: '', isStored: false, figures: failed(refused, settings), place: 0 };
  }
}

/** The figures in place of the files they were made from: a later review reads them with the same result. */
async function writeFigures(
  sites: readonly PlacedSite[],
  { out }: FleetOptions,
  { read }: OpenedFiles,
): Promise<Status> {
  if (out === undefined) throw parquetIsBinary();
  const file = figuresFile(digestOf);
  for (const { figures } of sites) if (figures.files.length + figures.failures.length > 0) file.add(figures);
  await writeWhole(out, file.whole(), read);
  return 0;
}

/** 1 where a pair stands out or is unfit; else 3 where it is not known of some whether they are fit. Source: design.md, section 8. */
function statusOf({ pairs }: Fleet): Status {
  if (pairs.some((p) => p.standsOut === true || p.readiness.fit === false)) return 1;
  return pairs.some((p) => p.readiness.fit === null) ? 3 : 0;
}
