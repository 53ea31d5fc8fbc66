import { expect, test } from 'vitest';
import { entryReader } from '../../../../src/import/phrasebook/entries.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';

test('a message of joined words that is known by its digits is not taken for one of the same shape', () => {
  const reader = entryReader(readPhrasebook('phrasebook.yaml', null));
  const unit = { pair: 'RO1', half: 'B', role: null };
  expect(reader.read(unit, 'partnerReady=7')).toBe('message');
  expect(reader.digitsMatter('partnerReady=7', '')).toBe(true);
  expect(reader.read(unit, 'partnerReady=1')).toEqual([
    { subject: { pair: 'RO1', half: null, role: null }, signal: 'partner-ready', value: 'yes' },
  ]);
});
