import { digestOf, platform } from '../../src/cli/platform.ts';
import { readFigures } from '../../src/pipeline.ts';
import { figuresFile } from '../../src/report/figures-parquet.ts';
import type { SiteFigures } from '../../src/vocabulary.ts';
import { sourceOf } from './read-text.ts';

/** The bytes of a file of these figures. */
export function figuresBytes(sites: readonly SiteFigures[]): Uint8Array {
  const file = figuresFile(digestOf);
  for (const site of sites) file.add(site);
  return file.whole();
}

/** Figures as they come back from a file. Throws InputError as `readFigures` does. */
export async function readBack(bytes: Uint8Array, name = 'x.parquet'): Promise<readonly SiteFigures[]> {
  const sites: SiteFigures[] = [];
  await readFigures(sourceOf(name, bytes), platform, (site) => sites.push(site));
  return sites;
}
