import type { Fleet } from '../vocabulary.ts';
import { leftOut, sayForecastLimits, sayHours } from './ahead-words.ts';
import { columns, pairCell, plain, type ShownTable } from './shown-table.ts';

const mostSteps = 8;

/** How long the next swaps take, at some of the steps. */
export function forecastTable({ forecast }: Fleet): ShownTable {
  const steps = forecast?.steps ?? [];
  const stride = Math.ceil(steps.length / mostSteps);
  const shown = steps.filter((_, index) => (steps.length - 1 - index) % stride === 0);
  return {
    file: 'fleet-forecast.csv',
    columns: columns('Swaps', 'Bring-up, expected', `${100 * (forecast?.confidence ?? 0)} % prediction`),
    rows: shown.map((s) => ({
      cells: [plain(s.swaps), plain(sayHours(s.hours)), plain(sayForecastLimits(s))],
      lines: [],
    })),
    note: shown.length < steps.length ? 'All steps are in fleet-forecast.csv.' : '',
  };
}

/** How many bouts of losses each pair is to expect in the next year, and all together. */
export function boutsTable(fleet: Fleet): ShownTable {
  const { boutsNextYear } = fleet;
  const left = leftOut(fleet);
  const { pairs = [] } = boutsNextYear ?? {};
  const all = boutsNextYear === null || pairs.length < 2 ? [] : [{ pair: null, ...boutsNextYear }];
  return {
    file: 'fleet.json',
    columns: columns('Pair', 'Bouts so far#', 'Expected in a year#', '95 % prediction'),
    rows: [...all, ...pairs].map(({ pair, bouts, value, low, high }) => ({
      cells: [
        pair === null ? plain('all together') : pairCell(pair),
        plain(bouts),
        plain(value.toFixed(1)),
        plain(`${low} to ${high}`),
      ],
      lines: [],
    })),
    note: left === '' ? '' : `${left}.`,
  };
}
