import { type ColumnKey, columnKeys } from '../phrasebook/column-keys.ts';
import { timeKeys, unitKeys } from './head.ts';
import type { Importer } from './importer.ts';

/** The layouts as people are told of them, without the code that reads them. */
export interface DescribedLayouts {
  readonly layouts: readonly {
    readonly id: string;
    readonly title: string;
    readonly summary: string;
    /** Its columns can be named in a phrasebook. */
    readonly isTable: boolean;
  }[];
  /** The columns that are read in a table of some layout. */
  readonly columns: readonly ColumnKey[];
}

/** Layouts in the order of their list, and the columns in the order in which people are asked for them. */
export function describeLayouts(importers: readonly Importer[]): DescribedLayouts {
  const required = importers.flatMap((i) =>
    i.shape === 'table' ? [...i.columns.required, ...i.columns.optional] : [],
  );
  const read = new Set([...timeKeys, ...unitKeys, ...required]);
  return {
    layouts: importers.map(({ id, title, summary, shape }) => ({
      id,
      title,
      summary,
      isTable: shape === 'table',
    })),
    columns: columnKeys.filter((key) => read.has(key)),
  };
}
