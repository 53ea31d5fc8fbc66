import { html, nothing, type TemplateResult } from 'lit';
import { fewFiles } from '../../src/report/alike-files.ts';
import type { FileModel } from '../protocol.ts';
import './file-fold.ts';
import { fileSection } from './file-section.ts';
import { PageElement } from './page-element.ts';

const mostShown = 40;

/** How each file was understood; many are a line each, those with most that was not understood first. */
export class FilesList extends PageElement {
  static override properties = { files: { attribute: false }, isAll: { state: true } };
  declare files: readonly FileModel[];
  declare isAll: boolean;

  constructor() {
    super();
    this.isAll = false;
  }

  override render(): TemplateResult {
    const { files } = this;
    if (files.length <= fewFiles) return html`${files.map(fileSection)}`;
    const worst = files.toSorted((a, b) => notRead(b) - notRead(a));
    const shown = this.isAll ? worst : worst.slice(0, mostShown);
    return html`<section>
      <h2>Files</h2>
      ${shown.map((file) => html`<file-fold .file=${file}></file-fold>`)}
      ${
        shown.length === files.length
          ? nothing
          : html`<p><button type="button" id="all-files" @click=${() => this.lengthen()}>Show all ${files.length.toLocaleString('en')} files</button></p>`
      }
    </section>`;
  }

  private lengthen(): void {
    this.isAll = true;
  }
}

function notRead({ input: { rows } }: FileModel): number {
  return rows.unmatched + rows.rejected;
}

customElements.define('files-list', FilesList);
