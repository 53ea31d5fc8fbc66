import { expect, test } from 'vitest';
import { isSeverityCell } from '../../../../src/import/layouts/column-content.ts';
import { conditionState } from '../../../../src/import/phrasebook/state-words.ts';

test.each([
  ['ACTIVE UNACK', 'on'],
  ['active/ack', 'on'],
  ['unack_active', 'on'],
  ['RTN - not acknowledged', 'off'],
  ['un-acked', 'on'],
  ['ACK', 'neither'],
  ['acknowledged, cleared', 'off'],
  ['stack active', undefined],
] as const)('%s is %s', (cell, state) => {
  expect(conditionState(cell)).toBe(state);
});

test.each(['(WARNING)', '[ warning ]', 'warning', '<Warning>', 'W'])('%s is a severity', (cell) => {
  expect(isSeverityCell(cell)).toBe(true);
});

test.each(['( )', '()', '[', ''])('%s is none', (cell) => {
  expect(isSeverityCell(cell)).toBe(false);
});

/** So many take a pattern that goes back over them minutes, and one pass over them milliseconds. */
const often = 500_000;

test.each([' ', '-', '_', '/', '\t'])('a long run of %j keeps nobody waiting', (character) => {
  const run = `a${character.repeat(often)}b`;
  expect(conditionState(run)).toBe(undefined);
  expect(conditionState(`active${character.repeat(often)}ack`)).toBe('on');
  expect(isSeverityCell(run)).toBe(false);
});
