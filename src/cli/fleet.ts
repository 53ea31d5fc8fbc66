import { analyse, fleet } from '../pipeline.ts';
import { fleetJson } from '../report/fleet-json.ts';
import { fleetReports } from '../report/fleet-reports.ts';
import { fleetText } from '../report/fleet-text.ts';
import { shownZone } from '../report/shown-zone.ts';
import type { Fleet } from '../vocabulary.ts';
import { type CommonOptions, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import { painterFor } from './paint.ts';
import type { Streams } from './streams.ts';
import { writeReports } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

export interface FleetOptions extends CommonOptions {
  readonly group?: Fleet['by'] | undefined;
  readonly swaps?: number | undefined;
  readonly readyDays?: number | undefined;
  readonly out?: string | undefined;
}

const usualSwaps = 10;

/** `fleet`: compares all pairs, and the losses and sync times of models, firmware or sites. */
export async function fleetFiles(
  paths: readonly string[],
  options: FleetOptions,
  streams: Streams,
): Promise<Status> {
  const imported = await importAll(paths, options, streams);
  const { settings } = imported;
  const { group, swaps, readyDays } = options;
  const question = { by: group ?? 'firmware', swaps: swaps ?? usualSwaps, readyDays };
  const reviewed = fleet(analyse(imported, limitsOf(settings), clocksOf(settings)), question);
  const zone = shownZone(settings.zone, reviewed.inputs);
  const asked = { zone, version: STEADYPAIR_VERSION };
  const reports =
    options.out === undefined
      ? []
      : await writeReports(options.out, await fleetReports(reviewed, asked), imported.read);
  const shown = { zone, paint: painterFor(streams.stdout), reports };
  streams.stdout.write(options.json === true ? fleetJson(reviewed) : fleetText(reviewed, shown));
  return statusOf(reviewed);
}

/** 1 where a pair stands out or is unfit; else 3 where it is not known of some whether they are fit. Source: design.md, section 8. */
function statusOf({ pairs }: Fleet): Status {
  if (pairs.some((p) => p.standsOut === true || p.readiness.fit === false)) return 1;
  return pairs.some((p) => p.readiness.fit === null) ? 3 : 0;
}
