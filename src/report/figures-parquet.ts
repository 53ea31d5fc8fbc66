import type { SiteFigures } from '../vocabulary.ts';
import { type FigureRow, figureRows } from './figure-rows.ts';
import { type Column, instant, number, parquetTable, text } from './parquet-file.ts';

/** Figures of a fleet that are written a site at a time. */
export interface FiguresFile {
  add(site: SiteFigures): void;
  whole(): Uint8Array;
}

/**
 * The figures of the pairs of several sites as a Parquet file, each site a group of rows, instants in milliseconds UTC: what a
 * fleet review needs of them, in place of their timelines. Equal figures give equal bytes. `digest` gives the SHA-256 in
 * lower-case hexadecimal.
 */
export function figuresFile(digest: (bytes: Uint8Array) => string): FiguresFile {
  const table = parquetTable(columns, JSON.stringify({ schema: 'steadypair/fleet-figures/1' }), digest);
  return {
    add(site) {
      const rows = figureRows(site);
      table.add(rows, rows.length);
    },
    whole: () => table.whole(),
  };
}

const columns: readonly Column<FigureRow>[] = [
  text('site', (row) => row.site),
  text('pair', (row) => row.pair),
  text('half', (row) => row.half),
  text('kind', (row) => row.kind),
  text('what', (row) => row.what),
  text('outcome', (row) => row.outcome),
  instant('time', (row) => row.time),
  instant('earliest', (row) => row.earliest),
  instant('until', (row) => row.until),
  number('seconds', 'DOUBLE', (row) => row.seconds),
  number('low', 'DOUBLE', (row) => row.low),
  number('high', 'DOUBLE', (row) => row.high),
  text('firmware', (row) => row.firmware),
  text('model', (row) => row.model),
  number('losses', 'INT32', (row) => row.losses),
  number('bouts', 'INT32', (row) => row.bouts),
  number('availability', 'DOUBLE', (row) => row.availability),
  number('p', 'DOUBLE', (row) => row.p),
  text('statement', (row) => row.statement),
  text('rest', (row) => row.rest),
];
