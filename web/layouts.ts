import type { DescribedLayouts } from '../src/pipeline.ts';

/** Put in when the page is built: the importers themselves are in its worker. */
declare const STEADYPAIR_LAYOUTS: DescribedLayouts;

/** What can be read, and which columns a person can name. */
export const { layouts, columns } = STEADYPAIR_LAYOUTS;
