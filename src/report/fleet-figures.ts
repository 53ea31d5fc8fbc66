import { census } from '../charts/census.ts';
import type { Chart } from '../charts/chart.ts';
import { syncTimeSurvival } from '../charts/sync-time-survival.ts';
import type { BringUpCause, CensusCount, Fleet } from '../vocabulary.ts';
import { censusRows } from './fleet-rows.ts';
import { causeWords } from './outcome-words.ts';
import { survivalRows } from './survival-rows.ts';

/** A picture with what a screen reader speaks; the table beside it has the same figures. */
export interface FleetFigure {
  readonly id: string;
  readonly spec: ReturnType<Chart<never>['spec']>;
  readonly caption: string;
}

/** A chart of its rows; none without rows. `name` tells several of one chart apart. */
export function figureOf<Row>(
  chart: Chart<Row>,
  rows: readonly Row[],
  name: string = chart.id,
): readonly FleetFigure[] {
  return rows.length === 0 ? [] : [{ id: name, spec: chart.spec(rows), caption: chart.describe(rows) }];
}

/** The captions, with how many are drawn where that is not all of them. */
export function drawnOf(
  figures: readonly FleetFigure[],
  drawn: number,
  all: number,
  words: string,
): readonly FleetFigure[] {
  if (drawn >= all) return figures;
  return figures.map((f) => ({ ...f, caption: `${f.caption} Shown: the ${words}, ${drawn} of ${all}.` }));
}

/** The curves of sync times after one cause. */
export function survivalFigures(fleet: Fleet, cause: BringUpCause): readonly FleetFigure[] {
  const rows = survivalRows(fleet, cause);
  const drawn = new Set(rows.map((row) => row.group)).size;
  const all = fleet.groups.filter((g) => g.cause === cause).length;
  const figures = figureOf(syncTimeSurvival, rows, `sync-times-${cause}`);
  return drawnOf(figures, drawn, all, 'slowest groups that became ready').map((figure) => ({
    ...figure,
    caption: `By ${causeWords[cause]}. ${figure.caption}`,
  }));
}

/** The census of firmware or of models. */
export function censusFigures(fleet: Fleet, signal: CensusCount['signal']): readonly FleetFigure[] {
  const rows = censusRows(fleet, signal);
  const drawn = new Set(rows.map((row) => row.value)).size;
  const all = new Set(fleet.census.filter((c) => c.signal === signal).map((c) => c.value)).size;
  const figures = figureOf(census, rows, `census-${signal}`);
  return drawnOf(figures, drawn, all, 'values that most halves report at the end').map((figure) => ({
    ...figure,
    caption: `${signal === 'firmware' ? 'Firmware' : 'Models'}. ${figure.caption}`,
  }));
}
