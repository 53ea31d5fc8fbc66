import { type LossRateRow, lossRates } from '../../../src/charts/loss-rates.ts';
import { checkChart } from '../../support/check-chart.ts';

const usual: LossRateRow = {
  pair: 'RO1',
  rate: 3,
  low: 0.6,
  high: 8.8,
  fleetRate: 4.5,
  fleetWord: 'fleet 4.5',
  word: '',
  standsOut: false,
};
const worse: LossRateRow = {
  ...usual,
  pair: 'RO2',
  rate: 12,
  low: 6,
  high: 21,
  fleetWord: '',
  word: 'stands out',
  standsOut: true,
};
const rust = 'stroke="#9a3b1c"';

checkChart(lossRates, [
  {
    name: 'draws a pair like the others in ink',
    rows: [usual],
    shows: ['RO1', 'fleet 4.5'],
    hides: [rust, 'fill="#9a3b1c"', 'NaN'],
    says: 'One pair, bouts of losses per year with 95 % limits against 4.5 of the whole fleet; none stands out.',
  },
  {
    name: 'names one that stands out, in rust and with its word',
    rows: [usual, worse],
    shows: ['RO2', 'stands out', 'fill="#9a3b1c"'],
    // Washed out, rust would fall short of the contrast that look.md asks for.
    hides: [' opacity="0.7"'],
    says: '2 pairs, bouts of losses per year with 95 % limits against 4.5 of the whole fleet; RO2 stands out.',
  },
  { name: 'of no pair says so', rows: [], shows: ['<svg'], says: 'No pair was observed.' },
]);
