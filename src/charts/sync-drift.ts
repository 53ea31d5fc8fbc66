import type { UnitSpec } from 'vega-lite/types_unstable/spec/index.js';
import type { Chart } from './chart.ts';
import { ink, quiet, rule, rust, secondInk } from './ink.ts';

/** One sync time in its order, with the moving average after it; seconds, `time` in milliseconds UTC. */
export interface DriftRow {
  readonly group: string;
  readonly time: number;
  readonly seconds: number;
  readonly average: number;
  readonly target: number;
  readonly low: number;
  readonly high: number;
  readonly isOutside: boolean;
  /** Said left of a point that is outside; empty where another so close says it. */
  readonly word: string;
  /** Said right of the limits and the target, in the last row alone. */
  readonly lowWord: string;
  readonly highWord: string;
  readonly targetWord: string;
}

/** Sync times of one group and cause over calendar time, smoothed, against what was usual in their first half. */
export const syncDrift: Chart<DriftRow> = {
  id: 'sync-drift',
  title: 'Sync time, smoothed',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 480,
    height: 180,
    config: quiet,
    encoding: {
      x: {
        field: 'time',
        type: 'temporal',
        scale: { type: 'utc', nice: false },
        axis: { title: null, grid: false, format: '%b %Y', tickCount: 6 },
      },
    },
    layer: [
      {
        mark: { type: 'area', color: rule, opacity: 0.45 },
        encoding: { y: seconds('low'), y2: { field: 'high' } },
      },
      {
        mark: { type: 'line', color: secondInk, strokeWidth: 1, strokeDash: [2, 2] },
        encoding: { y: seconds('target') },
      },
      {
        mark: { type: 'point', color: secondInk, size: 14, strokeWidth: 1 },
        encoding: { y: seconds('seconds') },
      },
      { mark: { type: 'line', color: ink, strokeWidth: 1.8 }, encoding: { y: seconds('average') } },
      {
        transform: [{ filter: 'datum.isOutside' }],
        mark: { type: 'point', color: rust, size: 50, strokeWidth: 2, opacity: 1 },
        encoding: { y: seconds('average') },
      },
      ...(['highWord', 'targetWord', 'lowWord'] as const).map((word) => ({
        transform: [{ filter: `datum.${word} !== ""` }],
        mark: { type: 'text', align: 'left', dx: 10, baseline: 'middle', color: secondInk } as const,
        encoding: {
          x: { value: { expr: 'width' } },
          y: seconds(word === 'highWord' ? 'high' : word === 'lowWord' ? 'low' : 'target'),
          text: { field: word, type: 'nominal' } as const,
        },
      })),
      // Beside the line, not over it: above what is too long, under what is too short.
      wordLayer('datum.average >= datum.target', -12),
      wordLayer('datum.average < datum.target', 18),
    ],
  }),
  describe: (rows) => {
    const last = rows.at(-1);
    if (last === undefined) return 'Too few sync times to smooth.';
    const outside = rows.filter((row) => row.isOutside).length;
    return `${rows.length} sync times of ${last.group}, smoothed: ${last.average.toFixed(0)} s at the end, ${last.target.toFixed(0)} s usual; ${outside === 0 ? 'none' : outside} outside ${last.low.toFixed(0)} to ${last.high.toFixed(0)} s.`;
  },
};

function wordLayer(where: string, dy: number): UnitSpec<string> {
  return {
    transform: [{ filter: `datum.word !== "" && ${where}` }],
    mark: { type: 'text', align: 'right', dy, color: rust },
    encoding: { y: seconds('average'), text: { field: 'word', type: 'nominal' } },
  };
}

function seconds(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: { readonly title: string; readonly grid: false; readonly tickCount: number };
  readonly scale: { readonly zero: false };
} {
  return {
    field,
    type: 'quantitative',
    axis: { title: 'seconds', grid: false, tickCount: 5 },
    scale: { zero: false },
  };
}
