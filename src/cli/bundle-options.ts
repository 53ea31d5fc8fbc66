import type { Answer, BundleCase } from '../bundle/case.ts';
import type { NamedYaml } from '../bundle/inside.ts';
import { InputError } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import type { ImportedFiles } from './command.ts';
import { mostChanges, platform } from './platform.ts';
import { writeWhole } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

/** What the commands that can hand a case over are told of it. */
export interface BundleOptions {
  readonly bundle?: string | undefined;
  readonly mask?: boolean | undefined;
}

/** Throws InputError for options that make no sense, before anything is read. */
export function checkBundleOptions({ bundle, mask }: BundleOptions): void {
  if (mask === true && bundle === undefined)
    throw new InputError('--mask', 'there is no bundle to mask.', 'Name one with --bundle FILE.zip.');
}

/** What was asked and read, as a bundle takes it. */
interface Asked {
  readonly job: NamedYaml | null;
  readonly pair: string | null;
  readonly from: number | null;
  readonly to: number | null;
}

/** Writes the bundle that was asked for, if any, and the key of a masked one; gives a line on each. Throws InputError. */
export async function writeBundle(
  { bundle, mask }: BundleOptions,
  imported: ImportedFiles,
  { job, pair, from, to }: Asked,
  answer: Answer,
): Promise<string> {
  if (bundle === undefined) return '';
  const one: BundleCase = {
    command: answer.kind,
    sources: imported.sources,
    failures: imported.notOpened,
    phrasebook: imported.phrasebookText,
    job,
    settings: { ...imported.settings, pair, from, to },
  };
  const tools = { platform, mostChanges, version: STEADYPAIR_VERSION };
  const { makeBundle } = await import('../bundle/make-bundle.ts');
  const made = await makeBundle(one, tools, { place: bundle, isMasked: mask === true, answer });
  await writeWhole(bundle, made.bytes, imported.read);
  const line = `Bundle: ${terminal(bundle)}\n`;
  if (made.key === null) return line;
  const key = `${bundle.replace(/\.zip$/i, '')}.key.json`;
  await writeWhole(key, made.key, imported.read);
  return `${line}Key: ${terminal(key)} (keep it: it is not in the bundle)\n`;
}
