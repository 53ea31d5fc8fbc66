import { html, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayCount } from '../../src/report/words.ts';
import type { How } from '../given-list.ts';
import type { NamedFile } from '../protocol.ts';

const mostNamed = 3;

/**
 * Asks whether files are added to those that are there or read in place of them; fires `files` with the answer. Adding is the
 * first choice, and Escape is none.
 */
export function addOrReplace(files: readonly NamedFile[], count: number): TemplateResult {
  const more = files.length - mostNamed;
  const names = files.slice(0, mostNamed).map(({ name }) => terminal(name));
  const answer =
    (how: How | 'not') =>
    ({ currentTarget }: Event): void => {
      const detail = { files, how };
      currentTarget?.dispatchEvent(new CustomEvent('files', { bubbles: true, detail }));
    };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') answer('not')(event);
  };
  return html`<section class="ask no-print" aria-label="Files to read" @keydown=${onKey}>
    <p class="long">${files.length === 1 ? 'New file' : `${files.length.toLocaleString('en')} new files`}: <b>${names.join(', ')}</b>${more > 0 ? ` and ${more.toLocaleString('en')} more` : ''}</p>
    <p class="choices">
      <button type="button" id="add-files" @click=${answer('add')}>Add to the ${sayCount(count, 'file')} read</button>
      <button type="button" id="replace-files" @click=${answer('replace')}>Replace ${count === 1 ? 'it' : 'them'}</button>
      <button type="button" id="no-files" @click=${answer('not')}>Cancel</button>
    </p>
  </section>`;
}
