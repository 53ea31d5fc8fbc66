import { type MeanBoutsRow, meanBouts } from '../../../src/charts/mean-bouts.ts';
import { checkChart } from '../../support/check-chart.ts';

const begin: MeanBoutsRow = {
  group: '6.2.0',
  pairs: 8,
  days: 0,
  mean: 0,
  low: 0,
  high: 0,
  label: '',
  labelAt: 2.5,
};
const end: MeanBoutsRow = { ...begin, days: 400, mean: 2.5, low: 1, high: 5, label: '6.2.0 (8 pairs)' };
const other = { group: '6.4.1', pairs: 1, labelAt: 4 };
const dashed = 'stroke-dasharray="7,3"';

checkChart(meanBouts, [
  {
    name: 'draws one group as a solid line with its limits, and names it at the end',
    rows: [begin, end],
    shows: ['6.2.0 (8 pairs)', 'observed days in the group', 'bouts per pair'],
    hides: [dashed, 'NaN'],
    says: 'Mean number of bouts of a pair by observed days in its group, with 95 % limits: 6.2.0 2.5 by 400 days (8 pairs).',
  },
  {
    name: 'tells a second group by its dashes',
    rows: [
      begin,
      end,
      { ...begin, ...other },
      { ...end, ...other, mean: 4, low: 4, high: 4, label: '6.4.1' },
    ],
    shows: [dashed, '6.4.1'],
    says: 'Mean number of bouts of a pair by observed days in its group, with 95 % limits: 6.2.0 2.5 by 400 days (8 pairs); 6.4.1 4.0 by 400 days (1 pair).',
  },
  { name: 'of no group says so', rows: [], shows: ['<svg'], says: 'No group had a bout.' },
]);
