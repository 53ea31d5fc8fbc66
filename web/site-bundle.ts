import type { BundleCase } from '../src/bundle/case.ts';
import type { NamedYaml } from '../src/bundle/inside.ts';
import { type BundleToPack, prepareBundle } from '../src/bundle/prepare-bundle.ts';
import { diagnose, verify } from '../src/pipeline.ts';
import type { Job } from '../src/vocabulary.ts';
import { platform } from './browser-files.ts';
import type { Question } from './protocol.ts';
import type { SiteSession } from './site-session.ts';

type Asked = Extract<Question, { readonly kind: 'bundle' }>;

/** The bundle of one pair of the site, as the command makes it, up to its reports. Throws InputError as `prepareBundle` does. */
export function bundleOf(
  site: SiteSession,
  { command, pair, isMasked, place }: Asked,
): Promise<BundleToPack> {
  const { analysed, members, phrasebook, said, notOpened, isAligned } = site;
  const job = command === 'verify' ? (site.jobs.get(pair) ?? null) : null;
  const one: BundleCase = {
    command,
    sources: [...members.values()],
    failures: notOpened,
    phrasebook,
    job: command === 'verify' ? textOf(site, job) : said.job,
    settings: { ...said.settings, align: isAligned, pair, from: null, to: null },
  };
  const answer =
    command === 'verify'
      ? {
          kind: command,
          analysed,
          verification: verify(analysed, pair, { from: null, to: null }, job),
        }
      : { kind: command, analysed, diagnosis: diagnose(analysed, pair) };
  return prepareBundle(one, { platform, pause }, { place, isMasked, answer });
}

/** The text of a job as its file has it; JSON, which is YAML too, where a person typed something else. */
function textOf({ jobTexts }: SiteSession, job: Job | null): NamedYaml | null {
  if (job === null) return null;
  const own = jobTexts.find((text) => JSON.stringify(text.job) === JSON.stringify(job));
  const { file: _file, ...said } = job;
  return own ?? { file: 'job.yaml', text: `${JSON.stringify(said, null, 1)}\n` };
}

/** The worker hears that it is to stop. */
function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
