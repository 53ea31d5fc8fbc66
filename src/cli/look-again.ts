import { findFiles } from './find-files.ts';
import type { FollowedFiles } from './watch-world.ts';

/** Follows files by looking at all of them again. */
export function lookAgain(paths: readonly string[]): FollowedFiles {
  let before = '';
  let timer: NodeJS.Timeout | undefined;
  return {
    async look() {
      const found = await findFiles(paths);
      const now = JSON.stringify(
        found.files.map(({ name, bytes }) => [name, bytes, found.identities.get(name)]),
      );
      const hasChanged = now !== before;
      before = now;
      return { ...found, hasChanged };
    },
    changed: (mostMs) =>
      new Promise((resolve) => {
        timer = setTimeout(resolve, mostMs);
      }),
    close: () => clearTimeout(timer),
  };
}
