import type { Estimate, Fleet } from '../vocabulary.ts';
import { csvCell } from './escape.ts';
import { asFigure, iso } from './json.ts';
import { type Cell, lossGroupCells, pairCells } from './loss-cells.ts';

/** The tables of a fleet review as CSV files, RFC 4180, safe to open in a spreadsheet; times in seconds, instants ISO 8601. */
export function fleetTables(fleet: Fleet): readonly { readonly name: string; readonly text: string }[] {
  return [
    { name: 'fleet-pairs.csv', text: csv(pairCells(fleet)) },
    { name: 'fleet-losses.csv', text: csv(lossGroupCells(fleet)) },
    { name: 'fleet-groups.csv', text: csv(groupRows(fleet)) },
    { name: 'fleet-attempts.csv', text: csv(attemptRows(fleet)) },
    { name: 'fleet-months.csv', text: csv(monthCells(fleet)) },
    { name: 'fleet-census.csv', text: csv(censusRows(fleet)) },
    { name: 'fleet-forecast.csv', text: csv(forecastRows(fleet)) },
  ];
}

function csv(rows: readonly (readonly Cell[])[]): string {
  return rows
    .map(
      (row) =>
        `${row.map((cell) => csvCell(typeof cell === 'number' ? asFigure(cell) : cell)).join(',')}\r\n`,
    )
    .join('');
}

function groupRows({ groups, by }: Fleet): readonly (readonly Cell[])[] {
  return [
    [
      by,
      'cause',
      'attempts',
      'censored',
      'superseded',
      ...limitNames('median'),
      ...limitNames('p95'),
      'tolerance9595',
      'neededFor9595',
      'months',
      ...limitNames('secondsPerYear'),
      'trendP',
    ],
    ...groups.map((g) => [
      g.group,
      g.cause,
      g.attempts,
      g.censored,
      g.superseded,
      ...limitsOf(g.median),
      ...limitsOf(g.p95),
      g.tolerance9595,
      g.neededFor9595,
      g.trend?.months ?? null,
      ...limitsOf(g.trend?.secondsPerYear ?? { value: null, low: null, high: null }),
      g.trend?.p ?? null,
    ]),
  ];
}

function attemptRows({ attempts }: Fleet): readonly (readonly Cell[])[] {
  return [
    ['pair', 'half', 'cause', 'start', 'model', 'firmware', 'serial', 'outcome', 'low', 'high', 'censored'],
    ...attempts.map((a) => [
      a.pair,
      a.half,
      a.cause,
      iso(a.start.time),
      a.model,
      a.firmware,
      a.serial,
      a.outcome,
      a.sync.low,
      a.sync.high,
      a.sync.censored ? 'yes' : 'no',
    ]),
  ];
}

function monthCells({ months }: Fleet): readonly (readonly Cell[])[] {
  return [
    ['pair', 'month', 'observedSeconds', 'losses', 'bouts'],
    ...months.map((m) => [m.pair, iso(m.from).slice(0, 7), m.observedSeconds, m.losses, m.bouts]),
  ];
}

function censusRows({ census }: Fleet): readonly (readonly Cell[])[] {
  return [
    ['time', 'signal', 'value', 'halves'],
    ...census.map((c) => [iso(c.time), c.signal, c.value, c.halves]),
  ];
}

function forecastRows({ forecast }: Fleet): readonly (readonly Cell[])[] {
  return [
    ['swaps', 'hours', 'low', 'high'],
    ...(forecast?.steps ?? []).map((s) => [s.swaps, s.hours, s.low, s.high]),
  ];
}

function limitNames(name: string): readonly string[] {
  return [name, `${name}Low`, `${name}High`];
}

function limitsOf({ value, low, high }: Estimate): readonly Cell[] {
  return [value, low, high];
}
