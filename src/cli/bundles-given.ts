import type { unpackFiles } from '../pipeline.ts';

type Unpacked = Awaited<ReturnType<typeof unpackFiles>>;

/**
 * Of a bundle that lies in a folder among logs nothing is read: this program wrote it there, from those logs. One that is named is
 * meant, and so are those in a folder of nothing but bundles.
 */
export function withoutOwnBundles(unpacked: Unpacked, paths: readonly string[]): Unpacked {
  const { sources, failures, reports, bundles } = unpacked;
  const isOf = (name: string, places: readonly string[]): boolean =>
    places.some((place) => name.startsWith(`${place}/`));
  const all = bundles.map(({ name }) => name);
  if (sources.every(({ name }) => isOf(name, all))) return unpacked;
  const own = all.filter((name) => !paths.includes(name));
  return {
    sources: sources.filter(({ name }) => !isOf(name, own)),
    failures: failures.filter(({ where }) => !isOf(where, own)),
    reports: [...reports, ...own],
    bundles: bundles.filter(({ name }) => !own.includes(name)),
  };
}

/** True if some logs are in no bundle. */
export function hasOtherLogs({ sources, bundles }: Unpacked): boolean {
  return sources.some(({ name }) => !bundles.some((bundle) => name.startsWith(`${bundle.name}/`)));
}
