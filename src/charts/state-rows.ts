import type { Chart } from './chart.ts';
import { ink, quiet, rust, secondInk } from './ink.ts';

/**
 * One stretch of a state in a row of its own: a link, the firmware. `from` and `to` are milliseconds of the shown clock, as
 * if it were UTC, as on the staff above it.
 */
export interface StateRow {
  /** `A link a`: the row it stands in. */
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly value: string;
  /** The value where there is room for it; else empty. */
  readonly word: string;
  /** Not as it should be: a link down, ports exchanged. */
  readonly isAbnormal: boolean;
  /** What is shown, whether or not the row reaches its ends. */
  readonly shownFrom: number;
  readonly shownTo: number;
}

/** What the halves reported besides role and readiness, in rows beneath the staff. */
export const stateRows: Chart<StateRow> = {
  id: 'state-rows',
  title: 'Links and firmware',
  spec: (rows) => ({
    data: { values: rows.map((row) => ({ ...row })) },
    width: 660,
    height: { step: 22 },
    config: quiet,
    encoding: {
      x: {
        field: 'from',
        type: 'temporal',
        scale: { type: 'utc', nice: false },
        axis: null,
      },
      y: {
        field: 'name',
        type: 'nominal',
        scale: { domain: [...new Set(rows.map((row) => row.name))] },
        axis: { title: null, domain: false, ticks: false, labelPadding: 6, labelLimit: 120, labelColor: ink },
      },
    },
    layer: [
      // Nothing to see: rows begin and end where the staff does, whether or not a state reaches so far.
      {
        mark: { type: 'rule', opacity: 0 },
        encoding: { x: { field: 'shownFrom', type: 'temporal' }, x2: { field: 'shownTo' } },
      },
      {
        transform: [{ filter: '!datum.isAbnormal' }],
        mark: { type: 'rule', color: secondInk, strokeWidth: 1 },
        encoding: { x2: { field: 'to' } },
      },
      {
        transform: [{ filter: 'datum.isAbnormal' }],
        mark: { type: 'rule', color: rust, strokeWidth: 3 },
        encoding: { x2: { field: 'to' } },
      },
      // Where a state begins; a new one after an old one is a step to be seen.
      { mark: { type: 'tick', color: secondInk, thickness: 1, size: 10 } },
      {
        mark: { type: 'text', align: 'left', dx: 3, dy: -7, fontSize: 13 },
        encoding: {
          text: { field: 'word', type: 'nominal' },
          color: {
            condition: { test: 'datum.isAbnormal', value: rust },
            value: ink,
          },
        },
      },
    ],
  }),
  describe: (rows) => {
    const names = [...new Set(rows.map((row) => row.name))];
    if (names.length === 0) return 'No links and no firmware were logged.';
    const said = names.map((name) => {
      const own = rows.filter((row) => row.name === name);
      const values = own.length > 6 ? [`${own.length} changes`] : own.map((row) => row.value);
      return `${name}: ${values.join(', ')}`;
    });
    return `${said.join('; ')}.`;
  },
};
