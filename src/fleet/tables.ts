import { type ColumnTable, desc, from, op } from 'arquero';
import type { CensusCount, PairReview } from '../vocabulary.ts';

/**
 * The tables of the review: grouped, rolled up and sorted. The library compiles its expressions, so they name
 * columns of ours and never hold text from a log.
 */

/** The value of a named column in one row. */
type Row = (column: string) => unknown;

/** How many halves say the same of one signal at one time, by signal, time and value; what is not known comes last. */
export function halvesCounted(rows: readonly CensusCount[]): readonly CensusCount[] {
  const keys = ['signal', 'time', 'value'];
  const counted = table(rows, [...keys, 'halves']).orderby(keys);
  return rowsOf(counted, (row) => ({
    time: Number(row('time')),
    signal: row('signal') === 'model' ? 'model' : 'firmware',
    value: row('value') === null ? null : String(row('value')),
    halves: Number(row('halves')),
  }));
}

/** Medians of values in months, in the order of the months. */
export function monthMedians(
  rows: readonly { readonly month: number; readonly value: number }[],
): readonly { readonly time: number; readonly value: number }[] {
  const medians = table(rows, ['month', 'value'])
    .groupby('month')
    .rollup({ value: op.median('value') })
    .orderby('month');
  return rowsOf(medians, (row) => ({ time: Number(row('month')), value: Number(row('value')) }));
}

/** Pairs that stand out first, then by rank, those that have none last, by name. */
export function worstFirst(pairs: readonly PairReview[]): readonly PairReview[] {
  const keys = pairs.map(({ pair, standsOut, rank, bouts }) => ({
    pair,
    standsOut: Number(standsOut ?? false),
    rank: rank ?? Number.MAX_VALUE,
    bouts,
  }));
  const sorted = table(keys, ['pair', 'standsOut', 'rank', 'bouts']).orderby(
    desc('standsOut'),
    'rank',
    desc('bouts'),
    'pair',
  );
  return Array.from(sorted.indices()).flatMap((index) => pairs[index] ?? []);
}

/** A table with the columns named, also where there is no row. */
function table(rows: readonly object[], columns: readonly string[]): ColumnTable {
  return from([...rows], [...columns]);
}

function rowsOf<T>(made: ColumnTable, read: (row: Row) => T): readonly T[] {
  return Array.from({ length: made.numRows() }, (_, index) => read((column) => made.get(column, index)));
}
