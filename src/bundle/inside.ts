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
export { detectEncoding } from '../import/bytes/decode.ts';
export type { NamedYaml } from '../import/bytes/open-bundle.ts';
export { readHead } from '../import/bytes/read-head.ts';
export { namedAlike } from '../import/phrasebook/alike-names.ts';
export { scalarsIn, type YamlScalar } from '../import/phrasebook/yaml-file.ts';
