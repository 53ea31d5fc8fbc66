import { expect, test } from 'vitest';
import { describeLayouts } from '../../../../src/import/layouts/describe-layouts.ts';
import { journal } from '../../../../src/import/layouts/journal.ts';
import { lines } from '../../../../src/import/layouts/lines.ts';
import { snapshots } from '../../../../src/import/layouts/snapshots.ts';

test('people can name the columns that some table is read by, in the order of the phrasebook', () => {
  const { columns } = describeLayouts([journal, snapshots, lines]);
  // A time, a unit, the message of a journal with its value, its state and until when it stood, the quality of a snapshot; severity and class are skipped.
  const said = ['value', 'state', 'ended', 'quality', 'message'];
  expect(columns).toEqual(['time', 'date', 'clock', 'unit', 'pair', 'half', 'role', ...said]);
});

test('layouts keep the order of their list, and only tables have columns to name', () => {
  const { layouts } = describeLayouts([journal, snapshots, lines]);
  expect(layouts.map(({ id, isTable }) => [id, isTable])).toEqual([
    ['journal', true],
    ['snapshots', true],
    ['lines', false],
  ]);
});
