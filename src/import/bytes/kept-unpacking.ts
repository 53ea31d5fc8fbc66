import { isGrowing, type Platform, type StoredFile } from './file-source.ts';
import { reportBytes } from './own-reports.ts';
import { nothing, together, type Unpacked, unpackFiles } from './unpack.ts';

/**
 * Unpacks as `unpackFiles` does, again and again: a file that is the same as before gives the same sources, the very objects, by
 * which their readings are kept. An archive is unpacked again when its size is another; what failed is tried again.
 */
export function keptUnpacking(): (files: readonly StoredFile[], platform: Platform) => Promise<Unpacked> {
  const known = new WeakMap<StoredFile, Kept>();
  const unpack = async (file: StoredFile, platform: Platform): Promise<Unpacked> => {
    const kept = known.get(file);
    // Of an archive the one that is there now counts.
    if (isGrowing(file) && file.replacedBy !== null && kept?.unpacked.sources[0] !== file) return nothing;
    if (kept !== undefined && stands(kept, file)) return kept.unpacked;
    const { bytes, name } = file;
    const unpacked = await unpackFiles([file], platform);
    if (unpacked.failures.length === 0) known.set(file, { bytes, name, unpacked });
    return unpacked;
  };
  return async (files, platform) => {
    const found: Unpacked[] = [];
    for (const file of files) found.push(await unpack(file, platform));
    return together(found);
  };
}

interface Kept {
  readonly bytes: number;
  readonly name: string;
  readonly unpacked: Unpacked;
}

function stands({ bytes, name, unpacked }: Kept, file: StoredFile): boolean {
  if (isGrowing(file) && file.life === 'gone') return true;
  // What is no archive by its first bytes is none, no matter what follows.
  if (unpacked.sources[0] === file) return bytes >= reportBytes || bytes === file.bytes;
  return bytes === file.bytes && name === file.name;
}
