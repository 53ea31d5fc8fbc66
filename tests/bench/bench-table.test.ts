import { expect, test } from 'vitest';
import { tableOf, withTable } from './bench-table.ts';

const row = { job: 'a poll', program: 'ours', seconds: 4, megabytes: 100.4 } as const;
const found = {
  rows: [
    { ...row, amount: { count: 1000, unit: 'MB' }, yardstick: { name: 'C', seconds: 1.6 } },
    { ...row, program: 'C', seconds: 1.6, amount: null, megabytes: null, yardstick: null },
  ],
  notes: ['One note.'],
  agrees: true,
} as const;

test('a job is named once, with its speed and its time by that of the yardstick', () => {
  expect(tableOf([found], 'On a machine.').split('\n')).toEqual([
    'On a machine.',
    '',
    '| Job    | Program |   Time |    Speed |  Peak memory | Time by yardstick |',
    '| ------ | ------- | -----: | -------: | -----------: | ----------------: |',
    '| a poll | ours    | 4.00 s | 250 MB/s |       100 MB |          2.50 × C |',
    '|        | C       | 1.60 s |          | not measured |                   |',
    '',
    'One note.',
    'All programs found the same changes of each poll, with the same bounds.',
  ]);
});

test('says loudly where programs do not agree, and nothing where none was compared', () => {
  expect(
    tableOf([{ ...found, agrees: false }], '')
      .split('\n')
      .at(-1),
  ).toBe('THE PROGRAMS DO NOT AGREE.');
  expect(
    tableOf([{ ...found, agrees: null }], '')
      .split('\n')
      .at(-1),
  ).toBe('One note.');
});

test('takes the place of the table that stood between the markers, and of nothing else', () => {
  const [begin, end] = ['<!-- The table of npm run bench -- SIZE --readme begins. -->', '<!-- It ends. -->'];
  const once = withTable(`before\n${begin}\n${end}\nafter\n`, 'first');
  expect(once).toBe(`before\n${begin}\n\nfirst\n\n${end}\nafter\n`);
  expect(withTable(once, 'second')).toBe(once.replace('first', 'second'));
  expect(() => withTable('no markers', 'x')).toThrow('The text has no');
});
