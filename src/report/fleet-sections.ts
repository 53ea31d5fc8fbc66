import { forecast } from '../charts/forecast.ts';
import { syncDrift } from '../charts/sync-drift.ts';
import type { Fleet } from '../vocabulary.ts';
import { boutsTable, forecastTable } from './ahead-tables.ts';
import { boutsComputed, forecastComputed } from './ahead-words.ts';
import { censusFigures, drawnOf, figureOf, survivalFigures } from './fleet-figures.ts';
import { findingTable, qualityTable } from './fleet-findings.ts';
import { driftRows, forecastRows } from './fleet-rows.ts';
import type { FleetSection } from './fleet-section.ts';
import { censusTable, driftTable, groupTable } from './fleet-shown-tables.ts';
import { lossSections } from './loss-sections.ts';
import { readinessTable } from './loss-tables.ts';
import { causeWords } from './outcome-words.ts';
import { driftWords, questionWords } from './question-words.ts';
import { syncTimesComputed } from './sync-words.ts';

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
    nextYear(fleet),
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
    howComputed: syncTimesComputed,
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
    howComputed: `${driftWords}${fleet.drifts.length > mostDrifts ? ` Shown: the first ${mostDrifts} of ${fleet.drifts.length} groups.` : ''}`,
  };
}

function censuses(fleet: Fleet): FleetSection {
  return {
    id: 'census',
    title: 'Firmware and models',
    figures: (['firmware', 'model'] as const).flatMap((signal) => censusFigures(fleet, signal)),
    table: censusTable(fleet),
    howComputed: 'Halves are counted at the start of each month and at the end of the logs.',
  };
}

function campaign(fleet: Fleet): FleetSection {
  return {
    id: 'forecast',
    title: 'The next swaps',
    figures: figureOf(forecast, forecastRows(fleet)),
    table: forecastTable(fleet),
    howComputed: forecastComputed(fleet),
  };
}

function nextYear(fleet: Fleet): FleetSection {
  return {
    id: 'next-year',
    title: 'Losses in the next year',
    figures: [],
    table: boutsTable(fleet),
    howComputed: boutsComputed,
  };
}

function readiness(fleet: Fleet): FleetSection {
  return {
    id: 'readiness',
    title: 'Which pairs are ready for a swap',
    figures: [],
    table: readinessTable(fleet),
    howComputed:
      'At the end of the log of each pair. This is no permission: check at the cabinet which half is standby.',
  };
}

function findings(fleet: Fleet, zone: string): FleetSection {
  return {
    id: 'findings',
    title: 'Findings',
    figures: [],
    table: findingTable(fleet, zone),
    howComputed:
      `The newest finding of each kind and pair; all are in fleet.json. ${questionWords(fleet.findings)}`.trimEnd(),
  };
}

function quality(fleet: Fleet, zone: string): FleetSection {
  return {
    id: 'quality',
    title: 'Data quality',
    figures: [],
    table: qualityTable(fleet, zone),
    howComputed: 'Time not observed and rows not recognised count neither as good nor as bad.',
  };
}
