import type { Answer, BundleCase } from '../bundle/case.ts';
import type { NamedYaml } from '../bundle/inside.ts';
import { makeBundle } from '../bundle/make-bundle.ts';
import { InputError } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import type { ImportedFiles } from './command.ts';
import type { OptionsFor } from './options.ts';
import { mostChanges, platform } from './platform.ts';
import { writeWhole } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

/** What the commands that can hand a case over are told of it. */
export interface BundleOptions {
  readonly bundle?: string | undefined;
  readonly mask?: boolean | undefined;
}

export const bundleOptions: OptionsFor<BundleOptions> = {
  bundle: {
    kind: 'text',
    takes: 'file.zip',
    says: 'write reports, logs and settings to one archive to hand over',
  },
  mask: {
    kind: 'flag',
    says: 'put stand-ins for names, serials and addresses in the bundle; the key is written beside it',
  },
};

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
  const made = await makeBundle(one, tools, { place: bundle, isMasked: mask === true, answer });
  await writeWhole(bundle, made.bytes, imported.read);
  const line = `Bundle: ${terminal(bundle)}\n`;
  if (made.key === null) return line;
  const key = `${bundle.replace(/\.zip$/i, '')}.key.json`;
  await writeWhole(key, made.key, imported.read);
  return `${line}Key: ${terminal(key)} (keep it: it is not in the bundle)\n`;
}
