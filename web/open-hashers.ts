import type { Platform } from '../src/pipeline.ts';
import { platform } from './browser-files.ts';
import type { ClosingHasher } from './hasher.ts';

/** The hashers that are at work. What ends before its file does leaves one behind, with its worker. */
export function openHashers(): { readonly open: Platform['sha256']; readonly close: () => void } {
  const all = new Set<ClosingHasher>();
  return {
    open(of) {
      const made = platform.sha256(of);
      all.add(made);
      return {
        update: made.update,
        digest() {
          // Each holds memory of its own, of which a browser has some hundred.
          all.delete(made);
          return made.digest();
        },
      };
    },
    close() {
      for (const hasher of all) hasher.close();
      all.clear();
    },
  };
}
