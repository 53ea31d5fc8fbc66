import { type RateChangeRow, rateChanges } from '../../../src/charts/rate-changes.ts';
import { checkChart } from '../../support/check-chart.ts';

const counted: RateChangeRow = {
  name: 'RO1',
  time: Date.UTC(2026, 0),
  bouts: 0,
  fitted: null,
  word: '',
  isRise: true,
};
const march = Date.UTC(2026, 2);
const rows: readonly RateChangeRow[] = [
  { ...counted, fitted: 0 },
  { ...counted, time: march, fitted: 0, word: 'more often from about Mar 2026' },
  { ...counted, time: Date.UTC(2026, 5), bouts: 3, fitted: 3 },
  counted,
  ...[1, 2, 3].map((bouts) => ({ ...counted, time: Date.UTC(2026, 1 + bouts), bouts })),
];
const rust = '#9a3b1c';

checkChart(rateChanges, [
  {
    name: 'draws a change to the worse in rust, with its word, and the two rates dashed',
    rows,
    shows: ['more often from about Mar 2026', rust, 'stroke-dasharray="7,3"', 'Mar 2026'],
    hides: ['NaN'],
    says: 'RO1: 3 bouts in total; more often from about Mar 2026.',
  },
  {
    name: 'draws one to the better without colour',
    rows: rows.map((row) => ({
      ...row,
      isRise: false,
      word: row.word === '' ? '' : 'less often from about Mar 2026',
    })),
    shows: ['less often from about Mar 2026'],
    hides: [rust],
    says: 'RO1: 3 bouts in total; less often from about Mar 2026.',
  },
  { name: 'of no change says so', rows: [], shows: ['<svg'], says: 'No rate changed.' },
]);
