import { type FileSource, figuresOf, importFiles, type Phrasebook } from '../pipeline.ts';
import type { SiteFigures } from '../vocabulary.ts';
import { clocksOf, limitsOf } from './command.ts';
import type { SiteTask } from './given-sites.ts';
import { mostChanges, platform } from './platform.ts';

/** How what is read together is read, besides what is said of it. */
export interface SiteReading {
  readonly phrasebook: Phrasebook;
  readonly onFile?: (source: FileSource) => void;
  readonly onProgress?: (bytes: number, rows: number) => void;
}

/** The figures of what is read together. Throws InputError as `importFiles` does. */
export async function readSite({ sources, settings }: SiteTask, reading: SiteReading): Promise<SiteFigures> {
  const { zone, order, year } = settings;
  const read = { zone, order, year, sha256: platform.sha256, mostChanges, ...reading };
  const imported = await importFiles(sources, read);
  return figuresOf(imported, limitsOf(settings), clocksOf(settings));
}
