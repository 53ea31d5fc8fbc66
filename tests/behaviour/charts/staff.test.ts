import { type StaffRow, staff } from '../../../src/charts/staff.ts';
import { checkChart } from '../../support/check-chart.ts';

const at = (minutes: number): number => Date.UTC(2026, 2, 14, 9, minutes);
const row = (mark: StaffRow['mark'], x: number, x2: number, y: number, text = ''): StaffRow => ({
  mark,
  x,
  x2,
  y,
  y2: y,
  text,
});

checkChart(staff, [
  {
    name: 'draws two halves, a word, and hostile text as text',
    rows: [
      row('name', at(0), at(0), 1, 'A'),
      row('name', at(0), at(0), 0, '<b>B</b>'),
      row('active', at(0), at(60), 1),
      row('not-ready', at(0), at(60), 0),
      row('tick', at(30), at(30), 0, 'B inserted'),
      row('tick', at(20), at(20), 0, 'B removed'),
      row('word', at(20), at(20), -0.72, 'B removed'),
    ],
    shows: [
      '>A<',
      '&lt;b&gt;B&lt;/b&gt;',
      'B removed',
      '09:00',
      'stroke-width="4"',
      'stroke-dasharray="5,3"',
    ],
    says: 'The staff of A and <b>B</b>, from the left. Marked on it: B removed, B inserted.',
  },
  {
    name: 'names the days where the log is longer than one',
    rows: [
      row('name', at(0), at(0), 1, 'A'),
      // From 14 March 09:00 to 10 April 09:00.
      row('active', at(0), at(27 * 24 * 60), 1),
    ],
    shows: ['>22 Mar<'],
    hides: ['>00:00<'],
    says: 'The staff of A, from the left. Marked on it: nothing.',
  },
  {
    name: 'draws what is abnormal in its colour with its word, and says it',
    rows: [
      row('name', at(0), at(0), 1, 'A'),
      row('warning', at(10), at(27), -1.7),
      row('warning-word', at(10), at(10), -1.95, 'no ready partner 17 min 08 s'),
      row('critical', at(12), at(13), -2.2),
      row('critical-word', at(12), at(12), -2.4, 'two active 1 min 00 s'),
      row('unobserved', at(40), at(50), -2.7),
      row('unobserved-word', at(40), at(40), -2.9, 'unobserved 10 min 00 s'),
      row('axis', at(0), at(60), -3.1),
    ],
    shows: [
      'stroke="#7a5600"',
      'fill="#7a5600">no ready partner 17 min 08 s',
      'stroke="#9a3b1c"',
      'fill="#9a3b1c">two active 1 min 00 s',
      '>unobserved 10 min 00 s<',
    ],
    says: 'The staff of A, from the left. Marked on it: no ready partner 17 min 08 s, two active 1 min 00 s, unobserved 10 min 00 s.',
  },
  {
    name: 'draws nothing but says so',
    rows: [],
    shows: ['<svg'],
    says: 'An empty staff. Marked on it: nothing.',
  },
]);
