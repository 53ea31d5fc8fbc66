import { fleetPlans, tellFleet } from '../../samples/fleet.ts';
import { journalOf } from '../../samples/fleet-files.ts';

/** A phrasebook of units that name their site: `Gull/RO1-A`. */
export const bySite =
  'units: [{ pattern: "^(?<site>[A-Z][a-z]+)/(?<pair>[A-Z]+[0-9]*)(-(?<half>[AB]))?$" }]\n';

/** Two years of some pairs of a site, a journal for each: pairs have the same names at every site. */
export function journalsOf(site: string, seed: number, count: number): readonly string[] {
  return tellFleet(fleetPlans.slice(0, count), seed).map((told) =>
    journalOf(told).replaceAll(/^(\d[^,]*),/gm, `$1,${site}/`),
  );
}
