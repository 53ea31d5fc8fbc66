import type { Fleet, LossGroup, PairReview } from '../vocabulary.ts';
import { iso } from './json.ts';

/** A cell of a CSV table; `null` is an empty one. */
export type Cell = string | number | null;

type Column<T> = readonly [string, (row: T) => Cell];

const pairColumns: readonly Column<PairReview>[] = [
  ['pair', (p) => p.pair],
  ['site', (p) => p.site],
  ['observedSeconds', (p) => p.observedSeconds],
  ['losses', (p) => p.losses],
  ['bouts', (p) => p.bouts],
  ['ratePerYear', (p) => p.ratePerYear?.value ?? null],
  ['ratePerYearLow', (p) => p.ratePerYear?.low ?? null],
  ['ratePerYearHigh', (p) => p.ratePerYear?.high ?? null],
  ['shrunkenPerYear', (p) => p.shrunkenPerYear],
  ['rank', (p) => p.rank],
  ['p', (p) => p.p],
  ['standsOut', (p) => yesOrNo(p.standsOut, '')],
  ['laplace', (p) => p.trend.laplace],
  ['trendP', (p) => p.trend.p],
  ['shape', (p) => p.trend.shape],
  ['shapeP', (p) => p.trend.shapeP],
  ['comesCloser', (p) => yesOrNo(p.trend.comesCloser, '')],
  ['changed', (p) => (p.change === null ? null : iso(p.change.time))],
  ['changedP', (p) => p.change?.p ?? null],
  ['availability', (p) => p.availability],
  ['fit', (p) => yesOrNo(p.readiness.fit, 'not known')],
  ['reasons', (p) => p.readiness.reasons.join(' ')],
];

/** The pairs with their names above. */
export function pairCells({ pairs }: Fleet): readonly (readonly Cell[])[] {
  return cellsOf(pairColumns, pairs);
}

/** The bouts of each group with their names above. */
export function lossGroupCells({ lossGroups, by }: Fleet): readonly (readonly Cell[])[] {
  const groupColumns: readonly Column<LossGroup>[] = [
    [by, (g) => g.group],
    ['pairs', (g) => g.pairs],
    ['observedSeconds', (g) => g.observedSeconds],
    ['losses', (g) => g.losses],
    ['bouts', (g) => g.bouts],
    ['ratePerYear', (g) => g.ratePerYear?.value ?? null],
    ['ratePerYearLow', (g) => g.ratePerYear?.low ?? null],
    ['ratePerYearHigh', (g) => g.ratePerYear?.high ?? null],
  ];
  return cellsOf(groupColumns, lossGroups);
}

function cellsOf<T>(columns: readonly Column<T>[], rows: readonly T[]): readonly (readonly Cell[])[] {
  return [columns.map(([name]) => name), ...rows.map((row) => columns.map(([, cellOf]) => cellOf(row)))];
}

function yesOrNo(value: boolean | null, unknown: string): string {
  if (value === null) return unknown;
  return value ? 'yes' : 'no';
}
