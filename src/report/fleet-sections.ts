import { forecast } from '../charts/forecast.ts';
import { lossRates } from '../charts/loss-rates.ts';
import { lossesOverTime } from '../charts/losses-over-time.ts';
import { syncDrift } from '../charts/sync-drift.ts';
import type { Fleet } from '../vocabulary.ts';
import { boutsTable, forecastTable } from './ahead-tables.ts';
import { boutsComputed, forecastComputed } from './ahead-words.ts';
import { censusFigures, drawnOf, type FleetFigure, figureOf, survivalFigures } from './fleet-figures.ts';
import { findingTable, qualityTable } from './fleet-findings.ts';
import { driftRows, forecastRows, lossRateRows, monthRows } from './fleet-rows.ts';
import {
  censusTable,
  driftTable,
  groupTable,
  monthTable,
  pairTable,
  readinessTable,
} from './fleet-shown-tables.ts';
import { causeWords } from './outcome-words.ts';
import { driftWords, questionWords } from './question-words.ts';
import type { ShownTable } from './shown-table.ts';
import { syncTimesComputed } from './sync-words.ts';

/** One question of the review: its pictures, and the same figures as a table. */
export interface FleetSection {
  readonly id: string;
  readonly title: string;
  readonly figures: readonly FleetFigure[];
  readonly table: ShownTable;
  /** How to read it, in a sentence. */
  readonly reading: string;
}

/** Of very many drifts those of the first groups are drawn; the table has all. */
const mostDrifts = 6;

/** The review of a fleet, question by question; those without an answer are left out. The same in every output. */
export function fleetSections(fleet: Fleet, zone: string): readonly FleetSection[] {
  return [
    pairs(fleet),
    months(fleet),
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

function pairs(fleet: Fleet): FleetSection {
  const rows = lossRateRows(fleet);
  const rated = fleet.pairs.filter((pair) => pair.ratePerYear.value !== null).length;
  return {
    id: 'pairs',
    title: 'Which pairs lose their partner',
    figures: drawnOf(figureOf(lossRates, rows), rows.length, rated, 'worst pairs'),
    table: pairTable(fleet),
    reading:
      'Limits are exact for Poisson counts. A pair stands out if its losses are too many for chance beside all others, at 5 in 100 false ones among those said to (Benjamini and Hochberg). Trends are those of Laplace’s test, at the same rate; a shape above 1 is that of losses that come closer. The lines of a pair are those of its newest losses, twenty at most.',
  };
}

function months(fleet: Fleet): FleetSection {
  const rows = monthRows(fleet);
  const drawn = new Set(rows.map((row) => row.pair)).size;
  const lost = fleet.pairs.filter((pair) => pair.losses > 0).length;
  const figures = drawnOf(figureOf(lossesOverTime, rows), drawn, lost, 'pairs with most losses');
  return {
    id: 'months',
    title: 'Losses over time',
    figures,
    table: monthTable(fleet),
    reading: `${figures.length === 0 ? '' : 'A thin line is time in which the pair was observed. '}Months are those of UTC.`,
  };
}

function syncTimes(fleet: Fleet): FleetSection {
  const causes = [...new Set(fleet.groups.map((g) => g.cause))];
  return {
    id: 'sync-times',
    title: `Sync times by ${fleet.by}`,
    figures: causes.flatMap((cause) => survivalFigures(fleet, cause)),
    table: groupTable(fleet),
    reading: syncTimesComputed,
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
    reading: `${driftWords}${fleet.drifts.length > mostDrifts ? ` Drawn are the first ${mostDrifts} of ${fleet.drifts.length} groups.` : ''}`,
  };
}

function censuses(fleet: Fleet): FleetSection {
  return {
    id: 'census',
    title: 'Firmware and models',
    figures: (['firmware', 'model'] as const).flatMap((signal) => censusFigures(fleet, signal)),
    table: censusTable(fleet),
    reading: 'Halves are counted at the begin of each month, and where all logs end.',
  };
}

function campaign(fleet: Fleet): FleetSection {
  return {
    id: 'forecast',
    title: 'The next swaps',
    figures: figureOf(forecast, forecastRows(fleet)),
    table: forecastTable(fleet),
    reading: forecastComputed(fleet),
  };
}

function nextYear(fleet: Fleet): FleetSection {
  return {
    id: 'next-year',
    title: 'Losses in the next year',
    figures: [],
    table: boutsTable(fleet),
    reading: boutsComputed,
  };
}

function readiness(fleet: Fleet): FleetSection {
  return {
    id: 'readiness',
    title: 'Which pairs are fit for a swap',
    figures: [],
    table: readinessTable(fleet),
    reading: 'As the log of each pair ends. It is no permission: check at the cabinet which half is standby.',
  };
}

function findings(fleet: Fleet, zone: string): FleetSection {
  return {
    id: 'findings',
    title: 'Findings',
    figures: [],
    table: findingTable(fleet, zone),
    reading:
      `Of each kind and pair the newest is told; all are in fleet.json. ${questionWords(fleet.findings)}`.trimEnd(),
  };
}

function quality(fleet: Fleet, zone: string): FleetSection {
  return {
    id: 'quality',
    title: 'Quality of the data',
    figures: [],
    table: qualityTable(fleet, zone),
    reading: 'What was not seen or not understood counts neither as good nor as bad.',
  };
}
