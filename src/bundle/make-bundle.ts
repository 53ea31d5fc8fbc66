import type { BundleCase, BundleTools } from './case.ts';
import { documentsOf } from './documents.ts';
import { type BundleOptions, type MadeBundle, prepareBundle } from './prepare-bundle.ts';

/**
 * One case as one zip: reports, the JSON document, the logs and all that they were read with. Equal cases give equal bytes;
 * `version` is that of this program. Throws InputError where what is inside would lead to another answer, or where names
 * cannot be masked.
 */
export async function makeBundle(
  one: BundleCase,
  tools: BundleTools & { readonly version: string },
  options: BundleOptions,
): Promise<MadeBundle> {
  const { answer, zone, pack } = await prepareBundle(one, tools, options);
  return pack(await documentsOf(answer, zone, tools.version));
}
