import { type DriftRow, syncDrift } from '../../../src/charts/sync-drift.ts';
import { checkChart } from '../../support/check-chart.ts';

const usual: DriftRow = {
  group: '6.2.0',
  time: Date.UTC(2026, 0, 5),
  seconds: 82,
  average: 80.6,
  target: 80,
  low: 70,
  high: 90,
  isOutside: false,
  word: '',
  lowWord: '',
  highWord: '',
  targetWord: '',
};
const last: DriftRow = {
  ...usual,
  time: Date.UTC(2026, 1, 5),
  seconds: 120,
  average: 92.4,
  isOutside: true,
  word: '1 min 32 s, outside its limits',
  lowWord: '1 min 10 s',
  highWord: '1 min 30 s',
  targetWord: 'usual 1 min 20 s',
};
const rust = 'stroke="#9a3b1c"';

checkChart(syncDrift, [
  {
    name: 'draws what stays within its limits without colour',
    rows: [usual, { ...usual, time: last.time }],
    shows: ['stroke="#1c2024"'],
    hides: [rust, 'NaN'],
    says: '2 sync times of 6.2.0, smoothed: 81 s at the end, 80 s usual; none outside 70 to 90 s.',
  },
  {
    name: 'marks what leaves them, with its word',
    rows: [usual, last],
    shows: [rust, '1 min 32 s, outside its limits', 'usual 1 min 20 s'],
    says: '2 sync times of 6.2.0, smoothed: 92 s at the end, 80 s usual; 1 outside 70 to 90 s.',
  },
  {
    name: 'marks what falls below them too, with its word',
    rows: [usual, { ...last, average: 64, word: 'outside' }],
    shows: [rust, '>outside<'],
    hides: ['NaN'],
    says: '2 sync times of 6.2.0, smoothed: 64 s at the end, 80 s usual; 1 outside 70 to 90 s.',
  },
  { name: 'of no sync time says so', rows: [], shows: ['<svg'], says: 'Too few sync times to smooth.' },
]);
