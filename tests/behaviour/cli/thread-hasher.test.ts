import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { threadHasher } from '../../../src/cli/thread-hasher.ts';
import { InputError } from '../../../src/pipeline.ts';

describe('SHA-256 on a thread of its own', () => {
  test("is the platform's, of pieces in shared memory and in memory that is a part of more", async () => {
    const bytes = Uint8Array.from({ length: 100_003 }, (_, index) => index % 251);
    const shared = new Uint8Array(new SharedArrayBuffer(70_000));
    shared.set(bytes.subarray(0, 70_000));
    const hasher = threadHasher('poll.csv');
    await hasher.update(shared);
    const start = createHash('sha256').update(bytes.subarray(0, 70_000)).digest('hex');
    expect(await hasher.digestSoFar?.()).toBe(start);
    await hasher.update(bytes.subarray(70_000));
    expect(await hasher.digest()).toBe(createHash('sha256').update(bytes).digest('hex'));
  });

  test('that dies is one line about the file, not an end without a word', async () => {
    const hasher = threadHasher('poll.csv');
    // No bytes at all: the thread can do nothing with them, and ends.
    const nothing = { buffer: new SharedArrayBuffer(1) };
    // @ts-expect-error A defect that no caller of ours can cause.
    const update = async (): Promise<void> => hasher.update(nothing);
    const died = new InputError(
      'poll.csv',
      'its SHA-256 could not be computed.',
      'Close other programs and try again.',
    );
    await expect(update()).rejects.toEqual(died);
  });
});
