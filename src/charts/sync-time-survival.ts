import type { LayerSpec, UnitSpec } from 'vega-lite/types_unstable/spec/index.js';
import { sayShare } from '../vocabulary.ts';
import type { Chart } from './chart.ts';
import { dashes, ink, labelWidth, quiet, rule, secondInk } from './ink.ts';

/** One step of the curve of one group: how many in 100 attempts are still without a ready partner after so many seconds. */
export interface SurvivalRow {
  readonly group: string;
  readonly attempts: number;
  readonly censored: number;
  readonly superseded: number;
  readonly seconds: number;
  readonly percent: number;
  readonly low: number;
  readonly high: number;
  /** The group, at one step of its curve; else empty. */
  readonly label: string;
  /** The height at which it stands, of 100. */
  readonly labelAt: number;
  /** Where the picture ends before the curves do, in seconds; `null` where it shows all. */
  readonly drawnTo: number | null;
  /** The limit for a steady light, in seconds, with its word in the first row alone. */
  readonly limit: number;
  readonly limitWord: string;
}

/** The sync times of the groups after one cause, as the share not ready yet. */
export const syncTimeSurvival: Chart<SurvivalRow> = {
  id: 'sync-time-survival',
  title: 'Attempts not ready yet, by time since the start',
  spec: (rows) => {
    const groups = [...new Set(rows.map((row) => row.group))];
    return {
      data: { values: rows.map((row) => ({ ...row })) },
      width: 560,
      height: 240,
      config: quiet,
      layer: [
        ...groups.map(band),
        ...groups.map(curve),
        {
          transform: [{ filter: 'datum.label !== ""' }],
          mark: { type: 'text', align: 'left', dx: 7, dy: -7, limit: labelWidth },
          encoding: {
            x: seconds('seconds'),
            y: percent('labelAt'),
            text: { field: 'label', type: 'nominal' },
          },
        },
        {
          transform: [{ filter: 'datum.limitWord !== ""' }],
          mark: { type: 'rule', color: secondInk, strokeWidth: 1, strokeDash: [2, 2] },
          encoding: { x: seconds('limit') },
        },
        {
          transform: [{ filter: 'datum.limitWord !== ""' }],
          mark: { type: 'text', align: 'center', baseline: 'bottom', dy: -3, color: secondInk },
          encoding: { x: seconds('limit'), y: { value: 0 }, text: { field: 'limitWord', type: 'nominal' } },
        },
      ],
    };
  },
  describe: (rows) => {
    const groups = [...new Map(rows.map((row) => [row.group, row])).values()];
    if (groups.length === 0) return 'No attempt was seen to become ready.';
    const said = groups.map(
      ({ group, attempts, superseded, censored }) =>
        `${group} ${attempts} attempts${superseded === 0 ? '' : `, ${superseded} of them superseded`}${censored === 0 ? '' : `, ${censored} not observed to the end`}`,
    );
    return `Share of attempts not ready yet by time since the start, with 95 % limits: ${said.join('; ')}.${cutSaid(groups)}`;
  },
};

/** What lies right of the picture; `last` holds the last row of each group. */
function cutSaid(last: readonly SurvivalRow[]): string {
  const drawnTo = last[0]?.drawnTo ?? null;
  if (drawnTo === null) return '';
  const left = last.map(({ group, percent: share }) => `${group} ${sayShare(share / 100)}`);
  return ` Drawn to ${drawnTo} s; not ready by then: ${left.join(', ')}.`;
}

type Layer = LayerSpec<string> | UnitSpec<string>;

function band(group: string): Layer {
  return {
    transform: [{ filter: { field: 'group', equal: group } }],
    mark: { type: 'area', color: rule, opacity: 0.45, interpolate: 'step-after' },
    encoding: { x: seconds('seconds'), y: percent('low'), y2: { field: 'high' } },
  };
}

function curve(group: string, index: number): Layer {
  return {
    transform: [{ filter: { field: 'group', equal: group } }],
    mark: {
      type: 'line',
      color: ink,
      strokeWidth: index === 0 ? 2.2 : 1.5,
      strokeDash: [...(dashes[index % dashes.length] ?? [])],
      interpolate: 'step-after',
    },
    encoding: { x: seconds('seconds'), y: percent('percent') },
  };
}

function seconds(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: { readonly title: string; readonly grid: false };
} {
  return { field, type: 'quantitative', axis: { title: 'seconds from the start', grid: false } };
}

function percent(field: string): {
  readonly field: string;
  readonly type: 'quantitative';
  readonly axis: { readonly title: string; readonly values: number[] };
  readonly scale: { readonly domain: number[] };
} {
  return {
    field,
    type: 'quantitative',
    axis: { title: 'not ready yet, of 100', values: [0, 25, 50, 75, 100] },
    scale: { domain: [0, 100] },
  };
}
