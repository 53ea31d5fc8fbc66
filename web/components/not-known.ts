import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { rowsNotKnown, sayLeftOut, sayRowsNotKnown } from '../../src/report/not-known.ts';
import type { PairModel, SiteModel } from '../protocol.ts';

/** The sections of Sources where what is not known can be mended. */
type Mend = 'wordings' | 'files-read' | 'phrasebook' | 'left-out';

/** True if every row was recognised and every file used. */
export function isAllKnown({ files, failures }: SiteModel): boolean {
  const { unmatched, rejected } = rowsNotKnown(files.map(({ input }) => input));
  return unmatched + rejected === 0 && failures.every(({ kind }) => kind === 'own-report');
}

/** What no verdict of the page can know, each with a button to where it is mended; nothing where all was recognised. */
export function notKnown(site: SiteModel): TemplateResult | typeof nothing {
  if (isAllKnown(site)) return nothing;
  const rows = rowsNotKnown(site.files.map(({ input }) => input));
  const leftOut = site.failures.filter(({ kind }) => kind === 'left-out').map(({ where }) => where);
  return html`<section class="not-known" aria-label="What is not known">
    <span class="inconclusive">Not known:</span>
    ${rows.unmatched + rows.rejected === 0 ? nothing : rowsLine(rows)}
    ${site.failures
      .filter(({ kind }) => kind === 'refused')
      .map(({ where, what }) => line(part(`${where} was refused: ${what}`, 'phrasebook', 'Load another')))}
    ${leftOut.length === 0 ? nothing : line(part(sayLeftOut(leftOut), 'left-out', 'Show reasons'))}
  </section>`;
}

function rowsLine(rows: PairModel['rows']): TemplateResult {
  const unmatched = sayRowsNotKnown({ ...rows, rejected: 0 });
  const rejected = sayRowsNotKnown({ ...rows, unmatched: 0 });
  return line(html`${unmatched.map((said) => part(said, 'wordings', 'Add rules'))}
    ${rejected.map((said) => part(unmatched.length === 0 ? said : sayRejected(rows), 'files-read', 'Show files'))}`);
}

/** After the rows not recognised, which said of how many. */
function sayRejected({ rejected }: PairModel['rows']): string {
  return `${rejected.toLocaleString('en')} ${rejected === 1 ? 'was' : 'were'} rejected.`;
}

function line(said: TemplateResult): TemplateResult {
  return html`<p>${said}</p>`;
}

function part(said: string, mend: Mend, words: string): TemplateResult {
  const go = ({ currentTarget }: Event): void => {
    currentTarget?.dispatchEvent(new CustomEvent('mend', { bubbles: true, detail: mend }));
  };
  return html`${terminal(said)} <button type="button" class="link no-print" @click=${go}>${words}<span class="hidden"> in Sources</span></button>`;
}

/** The share of rows not recognised in the files that name a pair, in the line above what is said of it. */
export function notKnownOfPair({ rows }: PairModel): TemplateResult | typeof nothing {
  const [said] = sayRowsNotKnown(rows);
  return said === undefined ? nothing : html`<span class="not-known-of-pair">In its files ${said}</span>`;
}
