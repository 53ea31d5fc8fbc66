import { expect, test } from 'vitest';
import { changesIn } from '../../../src/cli/platform.ts';

test('a heap holds two kilobytes for each change beside the program itself', () => {
  // 112 MiB are 72 MiB and 40 MiB, which are 20,480 times 2 KiB.
  expect(changesIn(112 * 1_048_576)).toBe(20_480);
  expect(changesIn(2120 * 1_048_576)).toBe(1_048_576);
});

test('a heap that the program itself fills holds none', () => {
  expect(changesIn(60 * 1_048_576)).toBe(0);
});
