import { findFiles } from './find-files.ts';
import type { FollowedFiles, LookedAt } from './watch-world.ts';

/** Follows files by looking at all of them again. */
export function lookAgain(paths: readonly string[]): FollowedFiles {
  let before = '';
  let timer: NodeJS.Timeout | undefined;
  const look = async (): Promise<LookedAt> => {
    const found = await findFiles(paths);
    const sizes = found.files.map(({ name, bytes }) => [name, bytes, found.identities.get(name)]);
    const now = JSON.stringify(sizes);
    const hasChanged = now !== before;
    before = now;
    return { ...found, hasChanged };
  };
  return {
    look,
    changed: (mostMs) =>
      new Promise((resolve) => {
        timer = setTimeout(resolve, mostMs);
      }),
    finish: look,
    close: async () => clearTimeout(timer),
  };
}
