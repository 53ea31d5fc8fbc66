import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayCount } from '../../src/report/words.ts';
import type { How } from '../given-list.ts';
import type { PageState } from '../page-state.ts';
import type { GivenModel } from '../protocol.ts';
import { saveText } from '../save-text.ts';
import { saySize } from '../say-size.ts';
import { PageElement } from './page-element.ts';

declare const STEADYPAIR_VERSION: string;

/** More are folded to their count. */
const mostShown = 12;

/** The files given, a line each with Remove; files are added or replaced here, and the session is saved. Fires `files`, `remove-file`, `undo-files`. */
export class FilesGiven extends PageElement {
  static override properties = { state: { attribute: false }, said: { state: true } };
  declare state: PageState;
  declare said: string;

  constructor() {
    super();
    this.said = '';
  }

  override render(): TemplateResult {
    const { site, fileStep } = this.state;
    const { given } = site;
    const bytes = given.reduce((sum, { size }) => sum + size, 0);
    const summary = `${sayCount(given.length, 'file')}, ${saySize(bytes)}`;
    return html`<section id="files-given" tabindex="-1">
      <h2>Files given</h2>
      <p class="choices">
        ${this.chooser('Add files', 'add')} ${this.chooser('Replace files', 'replace')}
        <button type="button" id="save-session" ?disabled=${site.files.length === 0} @click=${() => void this.save()}>Save session</button>
        ${fileStep === null ? nothing : html`<button type="button" id="undo-files" @click=${() => this.tell('undo-files', null)}>Undo: ${terminal(fileStep)}</button>`}
      </p>
      <p class="second" role="status">${this.said}</p>
      ${given.length > mostShown ? html`<details><summary>${summary}. Show</summary>${this.table(given)}</details>` : html`<p class="second">${summary}. Files can be dropped anywhere on this page.</p>${this.table(given)}`}
    </section>`;
  }

  private chooser(words: string, how: How): TemplateResult {
    return html`<label class="button">${words}<input type="file" multiple data-how=${how} @change=${(event: Event) => this.onChosen(event, how)} /></label>`;
  }

  private table(given: readonly GivenModel[]): TemplateResult {
    return html`<div class="scroll"><table class="given">
      <thead><tr><th scope="col">File</th><th scope="col" class="number">Size</th><th scope="col">SHA-256</th><th scope="col">Read as</th><td></td></tr></thead>
      <tbody>${given.map((file) => this.row(file))}</tbody>
    </table></div>`;
  }

  private row({ name, size, sha256, became }: GivenModel): TemplateResult {
    const hash = sha256 === null ? 'not computed' : html`<code title=${sha256}>${sha256.slice(0, 12)}</code>`;
    return html`<tr>
      <th scope="row" class="long">${terminal(name)}</th>
      <td class="number">${saySize(size)}</td>
      <td>${hash}</td>
      <td class="long">${terminal(became)}</td>
      <td><button type="button" class="link" @click=${() => this.tell('remove-file', name)}>Remove<span class="hidden"> ${terminal(name)}</span></button></td>
    </tr>`;
  }

  private onChosen({ target }: Event, how: How): void {
    if (!(target instanceof HTMLInputElement)) return;
    const files = [...(target.files ?? [])].map((file) => ({ name: file.name, file }));
    // The same files may be chosen again.
    target.value = '';
    if (files.length > 0) this.tell('files', { files, how });
  }

  private async save(): Promise<void> {
    try {
      const { name, text } = await this.state.session.ask<'session'>({
        kind: 'session',
        page: location.hash,
        saved: Date.now(),
        version: STEADYPAIR_VERSION,
      });
      saveText(name, text);
      this.said = `Saved ${name}. Drop it on this page to open it, here or on another computer.`;
    } catch (error) {
      this.tell('problem', error);
    }
  }

  private tell(name: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, detail }));
  }
}

customElements.define('files-given', FilesGiven);
