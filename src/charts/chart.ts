import type { TopLevelSpec } from 'vega-lite';

/** Rows in, Vega-Lite specification out. Every number drawn is a field of a row. */
export interface Chart<Row> {
  readonly id: string;
  readonly title: string;
  spec(rows: readonly Row[]): TopLevelSpec;
  /** What a screen reader speaks: the chart in a sentence, with its sample size. */
  describe(rows: readonly Row[]): string;
}
