import { lossesOverTime, type MonthRow } from '../../../src/charts/losses-over-time.ts';
import { checkChart } from '../../support/check-chart.ts';

const january: MonthRow = {
  pair: 'RO1',
  label: 'RO1',
  from: Date.UTC(2026, 0),
  to: Date.UTC(2026, 1),
  at: Date.UTC(2026, 0, 16),
  bouts: 2,
  losses: 2,
  isObserved: true,
};
const february: MonthRow = {
  ...january,
  label: '',
  from: Date.UTC(2026, 1),
  to: Date.UTC(2026, 2),
  at: Date.UTC(2026, 1, 15),
  bouts: 0,
  losses: 0,
};
const other: MonthRow = { ...january, pair: 'RO2', label: 'RO2', bouts: 1, losses: 4 };
const stroke = 'stroke-width="5"';

checkChart(lossesOverTime, [
  {
    name: 'draws a stroke for a month with bouts, in a row for each pair',
    rows: [january, february, other],
    shows: ['RO1', 'RO2', stroke, 'Feb 2026'],
    hides: ['NaN'],
    says: 'Bouts of losses in each month: RO1 2 in 2 months, RO2 1 (4 losses) in one month.',
  },
  {
    name: 'draws no line where nothing was observed',
    rows: [{ ...february, label: 'RO1', isObserved: false }],
    shows: ['RO1'],
    hides: [stroke],
    says: 'Bouts of losses in each month: RO1 0 in one month.',
  },
  { name: 'of no month says so', rows: [], shows: ['<svg'], says: 'No month was observed.' },
]);
