import type { SiteModel } from '../../web/protocol.ts';
import { readSite, siteModel } from '../../web/site-session.ts';
import { journalText } from './read-text.ts';

/** What the page knows of a journal, read as its worker reads it. */
export async function readPage(lines: readonly string[]): Promise<SiteModel> {
  const text = journalText([...lines].sort().join('\n'));
  const files = [{ name: 'a.log', file: new File([text], 'a.log') }];
  const session = await readSite({ kind: 'read', files, phrasebook: null, isAligned: false }, () => {});
  return siteModel(session);
}
