import { expect, test } from 'vitest';
import { refusalOf } from './sources.ts';

test('a folder is named as it is called within src and has tests of its own; anything else is refused in one line', () => {
  expect(refusalOf('timeline')).toBeNull();
  expect(refusalOf('import/clock')).toBeNull();
  for (const wrong of ['src/timeline', './src/timeline', 'timelines', ''])
    expect(refusalOf(wrong)).toMatch(
      new RegExp(`^mutants: "${wrong}" is no folder of both src/ and tests/behaviour/\\..* timeline, .*\\.$`),
    );
});
