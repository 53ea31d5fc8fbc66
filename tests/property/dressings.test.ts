/** The dressings of swap stories are exports that the program understands, and say truly what they can show. */
import { describe, expect, test } from 'vitest';
import { dress, dressings } from '../support/stories/dressings.ts';
import { swapStory } from '../support/stories/swap-story.ts';
import { verifyFiles } from '../support/verify-files.ts';

describe.each(dressings)('$id', ({ id }) => {
  test('is the same for the same seed', () => {
    const { story } = swapStory(5);
    expect(dress(story, 5, id)).toEqual(dress(story, 5, id));
  });

  test('is understood but for ordinary entries, and tells just the signals that it says it tells', async () => {
    for (const seed of [0, 1]) {
      const { files, sources, phrasebook } = dress(swapStory(seed).story, seed, id);
      const { analysed } = await verifyFiles(files, phrasebook);
      expect(analysed.files.length).toBe(sources.length);
      for (const source of sources) {
        const read = analysed.files.find((f) => f.input.file === source.file);
        expect(read?.input.rows.rejected).toBe(0);
        expect(read?.input.unmatched.filter((u) => !u.wording.includes('user Operator 3 logged'))).toEqual(
          [],
        );
        const told = new Set(read?.streams.flatMap((stream) => stream.signals));
        expect([source.file, [...told].sort()]).toEqual([source.file, [...source.signals].sort()]);
      }
    }
  });
});
