import { html, nothing, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { terminal } from '../../src/report/escape.ts';
import { demoFiles, demoFleet } from '../demo.ts';
import { droppedFiles } from '../dropped-files.ts';
import { layouts } from '../layouts.ts';
import type { NamedFile, Refusal } from '../protocol.ts';
import { followButton } from './follow-bar.ts';
import { PageElement } from './page-element.ts';

const kinds: readonly (readonly [string, string])[] = [
  ...layouts.map(({ title, summary }) => [title, summary] as const),
  ['phrasebook, job', 'YAML: what the site’s wording means; work order, people and plan'],
];

/** The first page: what it does, where files go, what it can read, the cautions. Fires `files`. */
export class StartView extends PageElement {
  static override properties = { problem: { state: true }, isOver: { state: true } };
  declare problem: Refusal | null;
  declare isOver: boolean;

  constructor() {
    super();
    this.problem = null;
    this.isOver = false;
  }

  override render(): TemplateResult {
    return html`<h1 class="lead">
        Reads the diagnostic exports of redundant controller pairs, rebuilds what happened to each pair, and shows with
        the log lines behind it whether a replacement left the pair redundant.
      </h1>
      ${this.dropTarget()}
      ${
        this.problem === null
          ? nothing
          : html`<p role="alert"><span class="fail">Not read:</span> ${terminal(`${this.problem.where}: ${this.problem.what} ${this.problem.fix}`)}</p>`
      }
      <section>
        <h2>What it reads</h2>
        <dl>${kinds.map(([name, shape]) => html`<dt>${name}</dt><dd>${shape}</dd>`)}</dl>
        <p class="second">
          UTF-8, UTF-16 and Windows-1252. Nothing leaves this computer: the page opens no connection, and its policy
          forbids it to.
        </p>
      </section>
      <section>
        <h2>Cautions</h2>
        <div class="cautions">${cautions.map((c) => html`<p>${c}</p>`)}</div>
      </section>`;
  }

  private dropTarget(): TemplateResult {
    return html`<div
      class=${this.isOver ? 'drop over' : 'drop'}
      @dragenter=${this.onOver}
      @dragover=${this.onOver}
      @dragleave=${() => {
        this.isOver = false;
      }}
      @drop=${this.onDrop}
    >
      <p>Drop exports here: files, a folder, or archives (zip, gzip).</p>
      <p class="choices">
        <label class="button">Choose files<input type="file" multiple @change=${this.onChosen} /></label>
        <label class="button">Choose a folder<input type="file" webkitdirectory @change=${this.onChosen} /></label>
        ${followButton()}
        <button type="button" id="demo" @click=${this.onDemo}>Open the demo site</button>
        <button type="button" id="demo-fleet" @click=${() => this.give(demoFleet())}>Open two years of its pairs</button>
      </p>
    </div>`;
  }

  private onOver(event: DragEvent): void {
    event.preventDefault();
    this.isOver = true;
  }

  private async onDrop(event: DragEvent): Promise<void> {
    event.preventDefault();
    this.isOver = false;
    const found = event.dataTransfer === null ? [] : await droppedFiles(event.dataTransfer);
    if ('where' in found) this.problem = found;
    else this.give(found);
  }

  private onChosen({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const chosen = [...(target.files ?? [])];
    this.give(chosen.map((file) => ({ name: file.webkitRelativePath || file.name, file })));
    // The same files may be chosen again.
    target.value = '';
  }

  private async onDemo(): Promise<void> {
    this.give(await demoFiles());
  }

  private give(files: readonly NamedFile[]): void {
    this.problem =
      files.length > 0
        ? null
        : { where: 'what was chosen', what: 'it holds no files.', fix: 'Choose the exports themselves.' };
    if (files.length > 0) this.dispatchEvent(new CustomEvent('files', { bubbles: true, detail: { files } }));
  }
}

customElements.define('start-view', StartView);
