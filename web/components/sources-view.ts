import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { PageState } from '../page-state.ts';
import type { NamedText } from '../protocol.ts';
import { saveText } from '../save-text.ts';
import type { View } from '../view.ts';
import { clocksSection } from './clocks-section.ts';
import { fileSection } from './file-section.ts';
import { PageElement } from './page-element.ts';
import './columns-form.ts';
import './wording-form.ts';

/** How each file was understood, what was not, and the phrasebook in which a person can teach it. */
export class SourcesView extends PageElement {
  static override properties = { state: { attribute: false } };
  declare state: PageState;

  override render(): TemplateResult {
    const { site, session } = this.state;
    return html`<h1 class="verdict">${this.summary()}</h1>
      ${this.failures()}
      <section>
        <h2>Wording that is not understood</h2>
        ${
          site.files.every((f) => f.wordings.length === 0)
            ? html`<p>Every row that could be read was understood.</p>`
            : html`<wording-form .files=${site.files} .session=${session}></wording-form>`
        }
      </section>
      ${this.phrasebook()}
      ${clocksSection(site, session, (isAligned) => void this.align(isAligned))}
      ${site.files.map(fileSection)}`;
  }

  private summary(): string {
    const { files, failures } = this.state.site;
    const left = failures.length === 0 ? '' : `, ${failures.length} left out`;
    const unknown = files.reduce((sum, f) => sum + f.input.rows.unmatched, 0);
    const rows = files.reduce((sum, f) => sum + f.input.rows.read, 0);
    const read = files.length === 1 ? 'One file was read' : `${files.length} files were read`;
    const said =
      unknown === 0
        ? 'every row was understood'
        : `${unknown.toLocaleString('en')} of ${rows.toLocaleString('en')} rows were not understood`;
    return files.length === 0 ? 'No file could be read.' : `${read}${left}; ${said}.`;
  }

  private failures(): TemplateResult | typeof nothing {
    const { failures } = this.state.site;
    if (failures.length === 0) return nothing;
    return html`<section>
      <h2>Left out</h2>
      <ul>
        ${failures.map(
          ({ where, what, fix }) =>
            html`<li><span class="inconclusive">Left out:</span> <b class="long">${terminal(where)}</b>: ${terminal(what)} ${terminal(fix)}</li>`,
        )}
      </ul>
      <columns-form .names=${failures.map((f) => f.where.replace(/:\d+$/, ''))} .session=${this.state.session}></columns-form>
    </section>`;
  }

  private phrasebook(): TemplateResult {
    const { phrasebook } = this.state.site;
    return html`<section>
      <h2>Phrasebook</h2>
      <p>
        ${
          phrasebook === null
            ? 'Only the built-in phrasebook is in use: plain English.'
            : html`In use: <b class="long">${terminal(phrasebook.file)}</b>, with the built-in one behind it.`
        }
      </p>
      <p class="choices">
        <label class="button">Load a phrasebook<input type="file" accept=".yaml,.yml" @change=${this.onLoad} /></label>
        <button type="button" id="save-phrasebook" ?disabled=${phrasebook === null} @click=${() => phrasebook !== null && saveText(baseName(phrasebook.file), phrasebook.text)}>Save the phrasebook</button>
        <button type="button" ?disabled=${phrasebook === null} @click=${() => this.use(null)}>Read without it</button>
      </p>
      ${phrasebook === null ? nothing : html`<details><summary>Its text</summary><pre tabindex="0" aria-label="Text of the phrasebook"><code>${terminal(phrasebook.text.slice(0, 20_000)).replaceAll('‹000A›', '\n')}</code></pre></details>`}
    </section>`;
  }

  private async onLoad({ target }: Event): Promise<void> {
    const file = target instanceof HTMLInputElement ? target.files?.[0] : undefined;
    if (file !== undefined) this.use({ file: file.name, text: await file.text() });
  }

  private use(detail: NamedText | null): void {
    this.dispatchEvent(new CustomEvent('phrasebook', { bubbles: true, detail }));
  }

  private async align(isAligned: boolean): Promise<void> {
    const detail = await this.state.session.ask<'align'>({ kind: 'align', isAligned });
    this.dispatchEvent(new CustomEvent('site', { bubbles: true, detail }));
  }
}

function baseName(name: string): string {
  return name.split('/').at(-1) ?? name;
}

customElements.define('sources-view', SourcesView);

export const sourcesView: View = {
  id: 'sources',
  title: 'Sources',
  render: (state) => html`<sources-view .state=${state}></sources-view>`,
};
