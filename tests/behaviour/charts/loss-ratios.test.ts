import { type LossRatioRow, lossRatios } from '../../../src/charts/loss-ratios.ts';
import { checkChart } from '../../support/check-chart.ts';

const alike: LossRatioRow = {
  name: '6.2.0 over 6.4.1',
  ratio: 0.8,
  low: 0.4,
  high: 1.7,
  same: 1,
  word: '',
  differs: false,
};
const unlike: LossRatioRow = {
  ...alike,
  name: '6.2.0 over 6.5.0',
  ratio: 0.2,
  low: 0.1,
  high: 0.4,
  word: 'differs',
  differs: true,
};
const rust = 'fill="#9a3b1c"';

checkChart(lossRatios, [
  {
    name: 'draws groups that are alike in ink',
    rows: [alike],
    shows: ['6.2.0 over 6.4.1', 'ratio of bouts per year'],
    hides: [rust, 'NaN'],
    says: 'Ratios of bouts per year with 95 % limits; 1 is the same: 6.2.0 over 6.4.1 0.8 (0.4 to 1.7).',
  },
  {
    name: 'draws those that differ in rust, with the word',
    rows: [alike, unlike],
    shows: ['6.2.0 over 6.5.0', rust, 'differs'],
    says: 'Ratios of bouts per year with 95 % limits; 1 is the same: 6.2.0 over 6.4.1 0.8 (0.4 to 1.7); 6.2.0 over 6.5.0 0.2 (0.1 to 0.4), differs.',
  },
  { name: 'of no comparison says so', rows: [], shows: ['<svg'], says: 'No groups were compared.' },
]);
