import {
  type Analysed,
  analyse,
  diagnose,
  type FileSource,
  type Imported,
  type InputError,
  importFiles,
  limitsWithHold,
  type Platform,
  readJob,
  readPhrasebook,
  verify,
} from '../pipeline.ts';
import type { Diagnosis, Verification } from '../vocabulary.ts';
import type { NamedYaml, Settings } from './inside.ts';

/** What was asked, and all that the answer rests on. */
export interface BundleCase {
  readonly command: 'verify' | 'diagnose';
  /** The logs, archives unpacked, in the order in which they are read. */
  readonly sources: readonly FileSource[];
  /** What was given, and could not be opened. */
  readonly failures: readonly InputError[];
  readonly phrasebook: NamedYaml | null;
  readonly job: NamedYaml | null;
  readonly settings: Settings;
}

/** What a bundle is made with. */
export interface BundleTools {
  readonly platform: Platform;
  /** How many changes fit into memory; not given: any number. */
  readonly mostChanges?: number;
  /** Lets the page stay alive. */
  readonly pause?: () => Promise<void>;
}

/** What the logs of a case say. */
export type Answer =
  | { readonly kind: 'verify'; readonly analysed: Analysed; readonly verification: Verification }
  | { readonly kind: 'diagnose'; readonly analysed: Analysed; readonly diagnosis: Diagnosis };

/** How the logs of a case are read. */
export function importOptions({ phrasebook, settings }: BundleCase, { platform, mostChanges }: BundleTools) {
  const { zone, order, year } = settings;
  return {
    phrasebook: readPhrasebook(phrasebook?.file ?? 'built-in phrasebook', phrasebook?.text ?? null),
    zone,
    order,
    year,
    sha256: platform.sha256,
    ...(mostChanges === undefined ? {} : { mostChanges }),
  };
}

/** Reads the logs of a case and answers it. Throws InputError as `verify` and `diagnose` do. */
export async function answerTo(one: BundleCase, tools: BundleTools): Promise<Answer> {
  const { command, sources, failures, settings, job } = one;
  const imported: Imported = await importFiles(sources, importOptions(one, tools));
  const clocks = { align: settings.align, reference: settings.reference };
  const all = { ...imported, failures: [...failures, ...imported.failures] };
  const analysed = analyse(all, limitsWithHold(settings.hold), clocks);
  if (command === 'diagnose')
    return { kind: command, analysed, diagnosis: diagnose(analysed, settings.pair) };
  const { pair, from, to } = settings;
  const said = job === null ? null : readJob(job.file, job.text);
  return { kind: command, analysed, verification: verify(analysed, pair, { from, to }, said) };
}
