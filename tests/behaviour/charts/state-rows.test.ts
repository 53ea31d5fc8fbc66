import { type StateRow, stateRows } from '../../../src/charts/state-rows.ts';
import { checkChart } from '../../support/check-chart.ts';

const at = (minutes: number): number => Date.UTC(2026, 2, 14, 9, minutes);
const row = (name: string, from: number, to: number, value: string, isAbnormal = false): StateRow => ({
  name,
  from: at(from),
  to: at(to),
  value,
  word: value,
  isAbnormal,
  shownFrom: at(0),
  shownTo: at(60),
});

checkChart(stateRows, [
  {
    name: 'draws a link that was down in rust, with its word',
    rows: [
      row('A link a', 0, 10, 'up'),
      row('A link a', 10, 12, 'down', true),
      row('A link a', 12, 60, 'up'),
    ],
    shows: ['>A link a<', '>down<', 'stroke="#9a3b1c"'],
    says: 'A link a: up, down, up.',
  },
  {
    name: 'has no colour where nothing is abnormal, and shows hostile text as text',
    rows: [row('<b>A</b> firmware', 0, 60, '<script>6.4.1</script>')],
    shows: ['&lt;b&gt;A&lt;/b&gt; firmware', '&lt;script&gt;6.4.1&lt;/script&gt;'],
    hides: ['#9a3b1c', '<script>'],
    says: '<b>A</b> firmware: <script>6.4.1</script>.',
  },
  {
    name: 'counts changes where there are many',
    rows: Array.from({ length: 8 }, (_, index) =>
      row('B link b', index, index + 1, index % 2 === 0 ? 'up' : 'down'),
    ),
    shows: ['>B link b<'],
    says: 'B link b: 8 changes.',
  },
  {
    name: 'draws nothing but says so',
    rows: [],
    shows: ['<svg'],
    says: 'No links and no firmware were logged.',
  },
]);
