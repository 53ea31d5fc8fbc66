import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayCount } from '../../src/report/words.ts';
import { oddIn } from '../odd-file.ts';
import type { FileModel } from '../protocol.ts';
import { fileBody } from './file-section.ts';
import { PageElement } from './page-element.ts';

/** One of many files as a line; how it was understood once it is opened. */
export class FileFold extends PageElement {
  static override properties = { file: { attribute: false }, isOpen: { state: true } };
  declare file: FileModel;
  declare isOpen: boolean;

  constructor() {
    super();
    this.isOpen = false;
  }

  override render(): TemplateResult {
    const { file, rows } = this.file.input;
    const odd = oddIn(this.file);
    const said =
      odd.length === 0 ? 'all recognised' : html`<span class="inconclusive">${odd.join(', ')}</span>`;
    return html`<details @toggle=${this.onToggle}>
      <summary><span class="long">${terminal(file)}</span>: ${sayCount(rows.read, 'row')}, ${said}</summary>
      ${this.isOpen ? fileBody(this.file) : nothing}
    </details>`;
  }

  private onToggle({ target }: Event): void {
    if (target instanceof HTMLDetailsElement) this.isOpen = target.open;
  }
}

customElements.define('file-fold', FileFold);
