import { html, nothing, type TemplateResult } from 'lit';
import { sayCount } from '../../src/report/words.ts';
import { oddIn } from '../odd-file.ts';
import type { FileModel } from '../protocol.ts';
import './file-fold.ts';
import { fileSection } from './file-section.ts';
import { PageElement } from './page-element.ts';
import './part-fold.ts';

/** So many files are a line each before the others are asked for. */
const mostShown = 12;

/** How each file was read, a line each: those with most rows not recognised first, the recognised ones folded to their count. */
export class FilesList extends PageElement {
  static override properties = { files: { attribute: false }, isAll: { state: true } };
  declare files: readonly FileModel[];
  declare isAll: boolean;

  constructor() {
    super();
    this.isAll = false;
  }

  override render(): TemplateResult | typeof nothing {
    const { files } = this;
    const [only] = files;
    if (only === undefined) return nothing;
    if (files.length === 1) return fileSection(only);
    const odd = files.filter((f) => oddIn(f).length > 0).toSorted((a, b) => notRead(b) - notRead(a));
    const known = files.filter((f) => oddIn(f).length === 0);
    const shown = this.isAll ? odd : odd.slice(0, mostShown);
    return html`<section id="files">
      <h2>Files</h2>
      ${shown.map((file) => html`<file-fold .file=${file}></file-fold>`)}
      ${
        shown.length === odd.length
          ? nothing
          : html`<p><button type="button" id="all-files" @click=${() => this.lengthen()}>Show all ${odd.length.toLocaleString('en')} files with something odd</button></p>`
      }
      ${known.length === 0 ? nothing : html`<part-fold class="known-files" .summary=${sayKnown(known, files.length)} .content=${() => html`${known.map((file) => html`<file-fold .file=${file}></file-fold>`)}`}></part-fold>`}
    </section>`;
  }

  private lengthen(): void {
    this.isAll = true;
  }
}

function sayKnown(known: readonly FileModel[], all: number): string {
  const rows = known.reduce((sum, { input }) => sum + input.rows.read, 0);
  return `${known.length.toLocaleString('en')} of ${sayCount(all, 'file')}: all ${rows.toLocaleString('en')} rows recognised. Show`;
}

function notRead({ input: { rows } }: FileModel): number {
  return rows.unmatched + rows.rejected;
}

customElements.define('files-list', FilesList);
