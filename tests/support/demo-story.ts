import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const demo = join('samples', 'marrow-bay');

/** A folder of its own. */
export function newFolder(): string {
  return mkdtempSync(join(tmpdir(), 'steadypair-bundle-'));
}

/** A story of the demo with its phrasebook and, where it has one, its job. */
export function story(name: 'clean-swap' | 'bad-swap' | 'wont-sync'): {
  readonly folder: string;
  readonly args: readonly string[];
} {
  const folder = join(demo, name);
  const yaml = name === 'wont-sync' ? [] : ['--job', join(folder, 'job.yaml')];
  return { folder, args: [folder, '--phrasebook', join(folder, 'phrasebook.yaml'), ...yaml] };
}
