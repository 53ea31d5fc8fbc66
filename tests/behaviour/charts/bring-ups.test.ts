import { type BringUpRow, bringUps } from '../../../src/charts/bring-ups.ts';
import { checkChart } from '../../support/check-chart.ts';

const inTime: BringUpRow = {
  name: 'half B, reflash',
  ready: 142,
  readyLow: 132,
  readyHigh: 152,
  readyWord: 'ready',
  steady: 262,
  steadyLow: 252,
  steadyHigh: 272,
  steadyWord: 'steady',
  notReadyTo: 142,
  end: 262,
  lateFrom: null,
  limit: 300,
  limitWord: 'five minutes',
  outcome: 'within',
  outcomeWord: '',
};
const unseen = {
  ready: null,
  readyLow: null,
  readyHigh: null,
  steady: null,
  steadyLow: null,
  steadyHigh: null,
};
const never: BringUpRow = {
  ...inTime,
  ...unseen,
  name: 'half A, insertion',
  notReadyTo: 500,
  end: 500,
  lateFrom: 300,
  limitWord: '',
  outcome: 'exceeded',
  outcomeWord: 'not steady, past the limit',
};
const late: BringUpRow = {
  ...inTime,
  steady: 340,
  steadyLow: 340,
  steadyHigh: 340,
  end: 340,
  lateFrom: 300,
  outcome: 'exceeded',
  outcomeWord: 'past the limit',
};
const undecided: BringUpRow = {
  ...late,
  lateFrom: null,
  outcome: 'inconclusive',
  outcomeWord: 'not settled',
};

const rust = 'stroke="#9a3b1c"';

checkChart(bringUps, [
  {
    name: 'shows ready, steady and the limit, and says what is past it',
    rows: [inTime, never],
    shows: ['half B, reflash', '>ready<', '>steady<', 'five minutes', 'not steady, past the limit', rust],
    says: '2 bring-ups against the limit of 300 s for a steady light; within it: 1; past it: 1; inconclusive: none; light not observed: none.',
  },
  {
    name: 'a light that came, but past the limit, is late in word and colour',
    rows: [late],
    shows: ['>steady<', '>past the limit<', rust],
    says: 'One bring-up against the limit of 300 s for a steady light; within it: none; past it: 1; inconclusive: none; light not observed: none.',
  },
  {
    name: 'what is not settled is counted as such and is not late',
    rows: [undecided],
    shows: ['>not settled<'],
    hides: [rust],
    says: 'One bring-up against the limit of 300 s for a steady light; within it: none; past it: none; inconclusive: 1; light not observed: none.',
  },
  {
    name: 'one bring-up in time has no colour',
    rows: [inTime],
    shows: ['five minutes'],
    hides: [rust],
    says: 'One bring-up against the limit of 300 s for a steady light; within it: 1; past it: none; inconclusive: none; light not observed: none.',
  },
  { name: 'none', rows: [], shows: ['<svg'], says: 'No bring-up.' },
]);
