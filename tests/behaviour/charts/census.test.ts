import { type CensusRow, census } from '../../../src/charts/census.ts';
import { checkChart } from '../../support/check-chart.ts';

const old: CensusRow = { time: Date.UTC(2026, 0), value: '6.2.0', halves: 4, label: '', labelAt: 1 };
const fewer: CensusRow = { ...old, time: Date.UTC(2026, 1), halves: 1, label: '6.2.0: 1' };
const renewed: CensusRow = { ...fewer, value: '6.4.1', halves: 3, label: '6.4.1: 3' };

checkChart(census, [
  {
    name: 'draws a line for each value, labelled at its end',
    rows: [old, { ...old, value: '6.4.1', halves: 0 }, fewer, renewed],
    shows: ['6.2.0: 1', '6.4.1: 3', 'stroke-dasharray="7,3"'],
    hides: ['NaN'],
    says: 'Halves at the end: 6.2.0: 1, 6.4.1: 3.',
  },
  {
    name: 'draws one time alone',
    rows: [fewer],
    shows: ['6.2.0: 1'],
    hides: ['NaN'],
    says: 'Halves at the end: 6.2.0: 1.',
  },
  { name: 'of nothing says so', rows: [], shows: ['<svg'], says: 'Nothing was reported.' },
]);
