import { forecast } from '../charts/forecast.ts';
import { syncDrift } from '../charts/sync-drift.ts';
import type { Fleet } from '../vocabulary.ts';
import { censusFigures, drawnOf, figureOf, survivalFigures } from './fleet-figures.ts';
import { findingTable, qualityTable } from './fleet-findings.ts';
import { driftRows, forecastRows } from './fleet-rows.ts';
import type { FleetSection } from './fleet-section.ts';
import { censusTable, driftTable, forecastTable, groupTable } from './fleet-shown-tables.ts';
import { lossSections } from './loss-sections.ts';
import { readinessTable } from './loss-tables.ts';
import { causeWords } from './outcome-words.ts';

/** Of very many drifts those of the first groups are drawn; the table has all. */
const mostDrifts = 6;

/** The review of a fleet, question by question; those without an answer are left out. The same in every output. */
export function fleetSections(fleet: Fleet, zone: string): readonly FleetSection[] {
  return [
    ...lossSections(fleet),
    syncTimes(fleet),
    drifts(fleet),
    censuses(fleet),
    campaign(fleet),
    readiness(fleet),
    findings(fleet, zone),
    quality(fleet, zone),
  ].filter((section) => section.table.rows.length > 0);
}

function syncTimes(fleet: Fleet): FleetSection {
  const causes = [...new Set(fleet.groups.map((g) => g.cause))];
  return {
    id: 'sync-times',
    title: `Sync times by ${fleet.by}`,
    figures: causes.flatMap((cause) => survivalFigures(fleet, cause)),
    table: groupTable(fleet),
    howComputed:
      'Attempts that were not seen to end count for as long as they were watched. Where times are known between two readings only, the curve is Turnbull’s and its limits are those of what the readings leave open; else it is Kaplan and Meier’s with Greenwood’s limits.',
  };
}

function drifts(fleet: Fleet): FleetSection {
  return {
    id: 'drifts',
    title: 'Sync times over time',
    figures: fleet.drifts.slice(0, mostDrifts).flatMap((drift, index) => {
      const rows = driftRows(drift);
      const figures = figureOf(syncDrift, rows, `drift-${index + 1}`);
      return drawnOf(figures, rows.length, drift.points.length, 'newest').map((figure) => ({
        ...figure,
        caption: `By ${causeWords[drift.cause]}. ${figure.caption}`,
      }));
    }),
    table: driftTable(fleet),
    howComputed: `The line is an exponentially weighted average; the ground behind it holds what is usual by the first half of the times.${fleet.drifts.length > mostDrifts ? ` Drawn are the first ${mostDrifts} of ${fleet.drifts.length} groups.` : ''}`,
  };
}

function censuses(fleet: Fleet): FleetSection {
  return {
    id: 'census',
    title: 'Firmware and models',
    figures: (['firmware', 'model'] as const).flatMap((signal) => censusFigures(fleet, signal)),
    table: censusTable(fleet),
    howComputed: 'Halves are counted at the begin of each month, and where all logs end.',
  };
}

function campaign(fleet: Fleet): FleetSection {
  return {
    id: 'forecast',
    title: 'The next swaps',
    figures: figureOf(forecast, forecastRows(fleet)),
    table: forecastTable(fleet),
    howComputed:
      'Bring-up alone, from the end of a reflash to a partner that held, drawn again and again from those that the logs show; people, permits and waiting are not in it.',
  };
}

function readiness(fleet: Fleet): FleetSection {
  return {
    id: 'readiness',
    title: 'Which pairs are fit for a swap',
    figures: [],
    table: readinessTable(fleet),
    howComputed:
      'As the log of each pair ends. It is no permission: check at the cabinet which half is standby.',
  };
}

function findings(fleet: Fleet, zone: string): FleetSection {
  return {
    id: 'findings',
    title: 'Findings',
    figures: [],
    table: findingTable(fleet, zone),
    howComputed: 'Of each kind and pair the newest is told; all are in fleet.json.',
  };
}

function quality(fleet: Fleet, zone: string): FleetSection {
  return {
    id: 'quality',
    title: 'Quality of the data',
    figures: [],
    table: qualityTable(fleet, zone),
    howComputed: 'What was not seen or not understood counts neither as good nor as bad.',
  };
}
