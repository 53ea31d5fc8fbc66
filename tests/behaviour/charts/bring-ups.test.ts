import { type BringUpRow, bringUps } from '../../../src/charts/bring-ups.ts';
import { checkChart } from '../../support/check-chart.ts';

const inTime: BringUpRow = {
  name: 'half B, reflash',
  ready: 142,
  readyLow: 132,
  readyHigh: 152,
  steady: 262,
  steadyLow: 252,
  steadyHigh: 272,
  watched: null,
  limit: 300,
  limitWord: 'five minutes',
  late: '',
};
const late: BringUpRow = {
  ...inTime,
  name: 'half A, insertion',
  ready: null,
  readyLow: null,
  readyHigh: null,
  steady: null,
  steadyLow: null,
  steadyHigh: null,
  watched: 500,
  limitWord: '',
  late: 'not steady, past the limit',
};

checkChart(bringUps, [
  {
    name: 'shows ready, steady and the limit, and says what is past it',
    rows: [inTime, late],
    shows: ['half B, reflash', 'ready', 'steady', 'five minutes', 'not steady, past the limit'],
    says: '2 bring-ups against the limit of 300 s for a steady light; past it: 1.',
  },
  {
    name: 'one bring-up in time',
    rows: [inTime],
    shows: ['five minutes'],
    says: 'One bring-up against the limit of 300 s for a steady light; past it: none.',
  },
]);
