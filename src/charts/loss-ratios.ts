import type { Chart } from './chart.ts';
import { ink, quiet, rule, rust, secondInk } from './ink.ts';

/** The rate of bouts in one group over that in another, with its limits, all above 0. */
export interface LossRatioRow {
  /** Both groups. */
  readonly name: string;
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
  /** Where the rates are the same: 1. */
  readonly same: number;
  /** Right of the limits of those that differ; else empty. */
  readonly word: string;
  readonly differs: boolean;
}

/** Groups compared two by two, in the order of the rows. Roots, not logarithms, make room for wide limits: those differ from one engine to the next. */
export const lossRatios: Chart<LossRatioRow> = {
  id: 'loss-ratios',
  title: 'Bouts per year in one group over those in another',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 400,
    height: { step: 24 },
    config: quiet,
    encoding: {
      y: {
        field: 'name',
        type: 'nominal',
        scale: { domain: rows.map((row) => row.name) },
        axis: { title: null, domain: false, ticks: false, labelPadding: 8, labelLimit: 220, labelColor: ink },
      },
    },
    layer: [
      {
        mark: { type: 'rule', color: secondInk, strokeWidth: 1, strokeDash: [2, 2] },
        encoding: { x: ratio('same'), y: { value: 0 }, y2: { value: { expr: 'height' } } },
      },
      {
        mark: { type: 'rule', color: rule, strokeWidth: 9 },
        encoding: { x: ratio('low'), x2: { field: 'high' } },
      },
      ...[false, true].map((differs) => ({
        transform: [{ filter: `datum.differs === ${differs}` }],
        mark: {
          type: 'tick',
          color: differs ? rust : ink,
          thickness: differs ? 4 : 2,
          size: differs ? 18 : 14,
          opacity: 1,
        } as const,
        encoding: { x: ratio('ratio') },
      })),
      {
        transform: [{ filter: 'datum.word !== ""' }],
        mark: { type: 'text', align: 'left', dx: 8, baseline: 'middle', color: rust },
        encoding: { x: ratio('high'), text: { field: 'word', type: 'nominal' } },
      },
    ],
  }),
  describe: (rows) => {
    const said = rows.map(
      (row) =>
        `${row.name} ${row.ratio.toFixed(1)} (${row.low.toFixed(1)} to ${row.high.toFixed(1)})${row.differs ? ', differs' : ''}`,
    );
    return said.length === 0
      ? 'No groups were compared.'
      : `Ratios of bouts per year with 95 % limits; 1 is the same: ${said.join('; ')}.`;
  },
};

function ratio(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly scale: { readonly type: 'sqrt'; readonly zero: true };
  readonly axis: { readonly title: string; readonly grid: false; readonly tickCount: number };
} {
  return {
    field,
    type: 'quantitative',
    scale: { type: 'sqrt', zero: true },
    axis: { title: 'ratio of bouts per year, with 95 % limits', grid: false, tickCount: 4 },
  };
}
