import type { BundleOptions } from './bundle-options.ts';
import type { OptionsFor } from './options.ts';

/** The options of the commands that can hand a case over. */
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
