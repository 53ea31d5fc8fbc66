import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { columns as columnKeys, layouts } from '../layouts.ts';
import type { Session } from '../session.ts';
import { PageElement } from './page-element.ts';

/** The layouts that have columns. */
const tables = layouts.filter(({ isTable }) => isTable).map(({ id }) => id);
const headLines = 4;

/** Says which column of a file is what, for a file whose header no phrasebook knows. Fires `taught`. */
export class ColumnsForm extends PageElement {
  static override properties = {
    names: { attribute: false },
    session: { attribute: false },
    chosen: { state: true },
    head: { state: true },
  };
  declare names: readonly string[];
  declare session: Session;
  declare chosen: string | null;
  declare head: readonly string[];

  constructor() {
    super();
    this.chosen = null;
    this.head = [];
  }

  override render(): TemplateResult {
    const option = (name: string): TemplateResult => html`<option value=${name}>${terminal(name)}</option>`;
    return html`<details @toggle=${this.onToggle}>
      <summary>Say which column is what</summary>
      <form class="fields" @submit=${this.onSubmit}>
        <label>File <select name="file" @change=${this.onFile}>${this.names.map(option)}</select></label>
        <label>Layout <select name="layout">${tables.map(option)}</select></label>
        ${this.head.length === 0 ? nothing : html`<pre tabindex="0" aria-label="How the file begins"><code>${this.head.map((line) => `${terminal(line)}\n`)}</code></pre>`}
        ${columnKeys.map((key) => html`<label>Column with the ${key}<input name=${key} autocomplete="off" spellcheck="false" /></label>`)}
        <button type="submit">Add to the phrasebook and read again</button>
      </form>
    </details>`;
  }

  private onToggle(): void {
    const first = this.names[0];
    if (this.chosen === null && first !== undefined) void this.look(first);
  }

  private onFile({ target }: Event): void {
    if (target instanceof HTMLSelectElement) void this.look(target.value);
  }

  private async look(file: string): Promise<void> {
    this.chosen = file;
    const cited = [{ file, line: 1, text: '' }];
    const [head] = await this.session.ask<'lines'>({ kind: 'lines', cited, reach: headLines });
    this.head = head?.state === 'same' ? head.lines : [];
  }

  private async onSubmit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(event.target instanceof HTMLFormElement)) return;
    const form = new FormData(event.target);
    const said = (key: string): string => String(form.get(key) ?? '').trim();
    const columns = Object.fromEntries(
      columnKeys.flatMap((key) => (said(key) === '' ? [] : [[key, said(key)]])),
    );
    const match = said('file').split('/').at(-1) ?? '';
    try {
      const lesson = { kind: 'columns', match, layout: said('layout'), columns } as const;
      const detail = await this.session.ask<'teach'>({ kind: 'teach', lessons: [lesson] });
      this.dispatchEvent(new CustomEvent('taught', { bubbles: true, detail }));
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    }
  }
}

customElements.define('columns-form', ColumnsForm);
