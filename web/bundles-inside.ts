import { bundlesSay, type SaidByBundles } from '../src/bundle/inside.ts';
import { readJob } from '../src/pipeline.ts';
import type { YamlText } from './given-files.ts';
import type { OpenedFile } from './given-store.ts';
import type { NotUsed } from './protocol.ts';

/** What the bundles among the files say, and the texts of theirs that apply: those that were given besides come first. */
export function insideOf(
  opened: readonly OpenedFile[],
  others: readonly YamlText[],
): { readonly said: SaidByBundles; readonly texts: readonly YamlText[] } {
  const bundles = opened.flatMap(({ unpacked }) => unpacked.bundles);
  const hasOthers = opened.some(
    ({ unpacked }) => unpacked.bundles.length === 0 && unpacked.sources.length > 0,
  );
  const said = bundlesSay(bundles, hasOthers);
  const { phrasebook, job } = said;
  const isThere = (isJob: boolean): boolean => others.some((text) => (text.job !== null) === isJob);
  return {
    said,
    texts: [
      ...(phrasebook === null || isThere(false) ? [] : [{ ...phrasebook, job: null }]),
      ...(job === null || isThere(true) ? [] : [{ ...job, job: readJob(job.file, job.text) }]),
    ],
  };
}

/** What must be said of bundles beside other files. */
export function noticesOf({ notices }: SaidByBundles): readonly NotUsed[] {
  return notices.map((notice) => {
    const [where = '', ...rest] = notice.split(': ');
    return { where, what: rest.join(': '), fix: '', kind: 'refused' };
  });
}

/** The file that was given in which an input lies: itself, its archive or its bundle. */
export function givenIn(
  { file, container }: { readonly file: string; readonly container?: { readonly file: string } },
  opened: readonly OpenedFile[],
): string {
  const bundle = opened.find(
    ({ given, unpacked }) => unpacked.bundles.length > 0 && file.startsWith(`${given.name}/`),
  );
  return bundle?.given.name ?? container?.file ?? file;
}
