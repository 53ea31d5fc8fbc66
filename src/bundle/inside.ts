/** What is inside a bundle and says how it is read, for those that read one. */
export {
  type BundledLog,
  bundleParts,
  bundleSchema,
  type Manifest,
  noSettings,
  type Settings,
} from '../import/bytes/bundle-schema.ts';
export { bundlesSay, type SaidByBundles } from '../import/bytes/bundles-say.ts';
export type { Bundle, NamedYaml } from '../import/bytes/open-bundle.ts';
export { namedAlike } from '../import/phrasebook/alike-names.ts';
