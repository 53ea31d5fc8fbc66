import { type GivenStore, givenStore } from '../../web/given-store.ts';
import type { GivenFile, Question, ReadingNews } from '../../web/protocol.ts';
import { readSite } from '../../web/read-site.ts';
import type { SiteSession } from '../../web/site-session.ts';

type ReadAsk = Extract<Question, { readonly kind: 'read' }>;

let number = 0;

/** A file as a person gives it to the page, with a number of its own. */
export function given(name: string, content: string | Uint8Array<ArrayBuffer>): GivenFile {
  number += 1;
  return { id: number, name, file: new File([content], name) };
}

/** What the page asks for these files, where a person chose nothing else. */
export function asked(files: readonly GivenFile[], more: Partial<ReadAsk> = {}): ReadAsk {
  return { kind: 'read', files, phrasebook: null, isAligned: null, jobs: {}, remembered: [], ...more };
}

/** Reads files as the page's worker does, and all that it tells meanwhile. */
export async function readGiven(
  files: readonly GivenFile[],
  more: Partial<ReadAsk> = {},
  store: GivenStore = givenStore(),
): Promise<{ readonly site: SiteSession; readonly news: readonly ReadingNews[] }> {
  const news: ReadingNews[] = [];
  return { site: await readSite(asked(files, more), store, (one) => news.push(one)), news };
}
