import { type SurvivalRow, syncTimeSurvival } from '../../../src/charts/sync-time-survival.ts';
import { checkChart } from '../../support/check-chart.ts';

const begin: SurvivalRow = {
  group: '6.2.0',
  attempts: 2,
  censored: 1,
  superseded: 0,
  seconds: 0,
  percent: 100,
  low: 100,
  high: 100,
  label: '',
  labelAt: 50,
  drawnTo: null,
  limit: 300,
  limitWord: 'five minutes',
};
const end: SurvivalRow = {
  ...begin,
  seconds: 80,
  percent: 50,
  low: 1,
  high: 91,
  label: '6.2.0 (n = 2)',
  limitWord: '',
};
const other = [begin, end].map((row) => ({ ...row, group: '6.4.1', censored: 0, label: '', limitWord: '' }));

checkChart(syncTimeSurvival, [
  {
    name: 'draws a curve with its label, its band and the five-minute line',
    rows: [begin, end],
    shows: ['6.2.0 (n = 2)', 'five minutes', 'fill="#d9d5cb"'],
    hides: ['NaN', 'stroke-dasharray="7,3"'],
    says: 'Share of attempts not ready yet by time since the start, with 95 % limits: 6.2.0 2 attempts, 1 not observed to the end.',
  },
  {
    name: 'tells a second group by its line, not by a colour',
    rows: [begin, end, ...other],
    shows: ['stroke-dasharray="7,3"'],
    hides: ['NaN'],
    says: 'Share of attempts not ready yet by time since the start, with 95 % limits: 6.2.0 2 attempts, 1 not observed to the end; 6.4.1 2 attempts.',
  },
  {
    name: 'says where it ends before a curve does, and how many are left',
    rows: [
      { ...begin, drawnTo: 1200 },
      { ...end, drawnTo: 1200 },
    ],
    shows: ['6.2.0 (n = 2)'],
    hides: ['NaN'],
    says: 'Share of attempts not ready yet by time since the start, with 95 % limits: 6.2.0 2 attempts, 1 not observed to the end. Drawn to 1200 s; not ready by then: 6.2.0 50 %.',
  },
  { name: 'of no attempt says so', rows: [], shows: ['<svg'], says: 'No attempt was seen to become ready.' },
]);
