import { type ForecastRow, forecast } from '../../../src/charts/forecast.ts';
import { checkChart } from '../../support/check-chart.ts';

const one: ForecastRow = {
  swaps: 1,
  hours: 0.07,
  low: 0.06,
  high: 0.08,
  label: '',
  learntFrom: 20,
  failed: 0,
  percent: 90,
};
const ten: ForecastRow = {
  ...one,
  swaps: 10,
  hours: 0.7,
  low: 0.65,
  high: 0.76,
  label: '39 min 00 s to 45 min 36 s',
};

checkChart(forecast, [
  {
    name: 'draws the hours with their band, and says the last',
    rows: [one, ten],
    shows: ['39 min 00 s to 45 min 36 s', 'fill="#d9d5cb"'],
    hides: ['NaN'],
    says: 'From 20 reflashes, none of which failed: 10 swaps take 39 min 00 s to 45 min 36 s of bring-up (90 % prediction).',
  },
  {
    name: 'draws one swap as a point',
    rows: [{ ...one, failed: 3, label: '3 min 36 s to 4 min 48 s' }],
    shows: ['3 min 36 s to 4 min 48 s'],
    hides: ['NaN'],
    says: 'From 20 reflashes, 3 of which failed: one swap takes 3 min 36 s to 4 min 48 s of bring-up (90 % prediction).',
  },
  { name: 'of no reflash says so', rows: [], shows: ['<svg'], says: 'No reflash in the logs.' },
]);
