import { briefly, reviewInBrief, reviewSites, type SitesQuestion } from '../pipeline.ts';
import { figuresFile } from '../report/figures-parquet.ts';
import { fleetJson } from '../report/fleet-json.ts';
import { fleetReports } from '../report/fleet-reports.ts';
import { fleetText } from '../report/fleet-text.ts';
import { shownZone } from '../report/shown-zone.ts';
import type { Fleet, FleetInBrief } from '../vocabulary.ts';
import { type CommonOptions, clocksOf, limitsOf, type Status } from './command.ts';
import { type OpenedFiles, openGiven } from './open-given.ts';
import { painterFor } from './paint.ts';
import { digestOf } from './platform.ts';
import { readSites } from './read-sites.ts';
import type { Streams } from './streams.ts';
import { parquetIsBinary, writeReports, writeWhole } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

export interface FleetOptions extends CommonOptions {
  readonly group?: Fleet['by'] | undefined;
  readonly swaps?: number | undefined;
  readonly readyDays?: number | undefined;
  readonly format?: 'parquet' | undefined;
  readonly out?: string | undefined;
}

const usualSwaps = 10;

/** `fleet`: compares all pairs, and the losses and sync times of models, firmware or sites. */
export async function fleetFiles(
  paths: readonly string[],
  options: FleetOptions,
  streams: Streams,
): Promise<Status> {
  if (options.format === 'parquet' && options.out === undefined) throw parquetIsBinary();
  const opened = await openGiven(paths, options, [streams.stdout, streams.stderr], undefined);
  if (options.format === 'parquet') return writeFigures(opened, options, streams);
  const isWhole = options.json === true || options.out !== undefined;
  return isWhole ? reviewWhole(opened, options, streams) : reviewForTerminal(opened, options, streams);
}

/** Of what a terminal shows the figures are kept in brief. */
async function reviewForTerminal(
  opened: OpenedFiles,
  options: FleetOptions,
  streams: Streams,
): Promise<Status> {
  const sites = await readSites(opened, streams, briefly());
  const reviewed = reviewInBrief(
    sites.map((site) => site.figures),
    questionOf(opened, options, sites),
  );
  const zone = shownZone(opened.settings.zone, reviewed.inputs);
  streams.stdout.write(fleetText(reviewed, { zone, paint: painterFor(streams.stdout), reports: [] }));
  return statusOf(reviewed);
}

async function reviewWhole(opened: OpenedFiles, options: FleetOptions, streams: Streams): Promise<Status> {
  const sites = await readSites(opened, streams, (site) => site);
  const reviewed = reviewSites(
    sites.map((site) => site.figures),
    questionOf(opened, options, sites),
  );
  const zone = shownZone(opened.settings.zone, reviewed.inputs);
  const asked = { zone, version: STEADYPAIR_VERSION };
  const reports =
    options.out === undefined
      ? []
      : await writeReports(options.out, await fleetReports(reviewed, asked), opened.read);
  const shown = { zone, paint: painterFor(streams.stdout), reports };
  streams.stdout.write(options.json === true ? fleetJson(reviewed) : fleetText(reviewed, shown));
  return statusOf(reviewed);
}

/** The figures in place of the files they were made from: a later review reads them with the same result. */
async function writeFigures(opened: OpenedFiles, { out }: FleetOptions, streams: Streams): Promise<Status> {
  if (out === undefined) throw parquetIsBinary();
  const sites = await readSites(opened, streams, (site) => site);
  const file = figuresFile(digestOf);
  for (const { figures } of sites) if (figures.files.length + figures.failures.length > 0) file.add(figures);
  await writeWhole(out, file.whole(), opened.read);
  return 0;
}

function questionOf(
  { sources, settings }: OpenedFiles,
  { group, swaps, readyDays }: FleetOptions,
  sites: readonly { readonly place: number }[],
): SitesQuestion {
  const places = new Map(sources.map(({ name }, place) => [name, place]));
  return {
    by: group ?? 'firmware',
    swaps: swaps ?? usualSwaps,
    readyDays,
    limits: limitsOf(settings),
    align: clocksOf(settings).align,
    placeOf: ({ file, container }, site) => places.get(container?.file ?? file) ?? sites[site]?.place ?? 0,
  };
}

/** 1 where a pair stands out or is unfit; else 3 where it is not known of some whether they are fit. Source: design.md, section 8. */
function statusOf({ pairs }: Pick<FleetInBrief, 'pairs'>): Status {
  if (pairs.some((p) => p.standsOut === true || p.readiness.fit === false)) return 1;
  return pairs.some((p) => p.readiness.fit === null) ? 3 : 0;
}
