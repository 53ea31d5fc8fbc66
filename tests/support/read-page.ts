import { givenStore } from '../../web/given-store.ts';
import type { SiteModel } from '../../web/protocol.ts';
import { readSite } from '../../web/read-site.ts';
import { siteModel } from '../../web/site-session.ts';
import { journalText } from './read-text.ts';

/** What the page knows of a journal, read as its worker reads it. */
export async function readPage(lines: readonly string[]): Promise<SiteModel> {
  const text = journalText([...lines].sort().join('\n'));
  const files = [{ id: 1, name: 'a.log', file: new File([text], 'a.log') }];
  const session = await readSite(
    { kind: 'read', files, phrasebook: null, isAligned: false, jobs: {}, remembered: [] },
    givenStore(),
    () => {},
  );
  return siteModel(session);
}
