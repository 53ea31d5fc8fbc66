import { expect, test } from 'vitest';
import { changesIn } from '../../../src/cli/platform.ts';

test('a heap holds 640 bytes for each change beside the program itself', () => {
  // 112 MiB are 72 MiB and 40 MiB, which are 65,536 times 640 bytes; 2120 MiB are 72 MiB and 2 GiB.
  expect(changesIn(112 * 1_048_576)).toBe(65_536);
  expect(changesIn(2120 * 1_048_576)).toBe(3_355_443);
});

test('a heap that the program itself fills holds none', () => {
  expect(changesIn(60 * 1_048_576)).toBe(0);
});
