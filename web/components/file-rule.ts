import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { FileDraft, Survey, TriedTable } from '../../src/vocabulary.ts';
import type { Session } from '../session.ts';
import './columns-form.ts';
import './draft-form.ts';
import { PageElement } from './page-element.ts';

/** How one file is read: by its columns where it is a table, else by the pattern of its lines. */
export class FileRule extends PageElement {
  static override properties = {
    file: { attribute: false },
    draft: { attribute: false },
    survey: { attribute: false },
    session: { attribute: false },
    isOpen: { state: true },
    table: { state: true },
  };
  declare file: string;
  declare draft: FileDraft | null;
  declare survey: Survey | null;
  declare session: Session;
  declare isOpen: boolean;
  /** `null`: it is no table; undefined: not looked at yet. */
  declare table: TriedTable | null | undefined;

  constructor() {
    super();
    this.isOpen = false;
  }

  override render(): TemplateResult {
    return html`<details @toggle=${this.onToggle}>
      <summary>Say how <span class="long">${terminal(this.file)}</span> is read</summary>
      ${this.isOpen ? this.body() : nothing}
    </details>`;
  }

  private body(): TemplateResult {
    const { draft, file, survey, session, table } = this;
    // Lines are no table, though commas or bars may stand in them; that is known once all files were looked through.
    if (draft !== null && survey !== null && isText(draft))
      return html`<draft-form .draft=${draft} .survey=${survey}></draft-form>`;
    if (table === undefined) return html`<p role="status">Reading its first rows.</p>`;
    if (table !== null)
      return html`<columns-form .file=${file} .table=${table} .survey=${survey} .session=${session}></columns-form>`;
    return html`<p>It is no table, and no timestamp was found in its lines. Export it again with date and time in each line, or describe its lines under files in a phrasebook.</p>`;
  }

  private onToggle({ target }: Event): void {
    if (!(target instanceof HTMLDetailsElement)) return;
    this.isOpen = target.open;
    if (target.open && this.table === undefined) void this.look();
  }

  /** The columns that were guessed are where a person begins. */
  private async look(): Promise<void> {
    const { file, draft } = this;
    const guessed = draft?.keys.find(({ key }) => key === 'columns')?.value;
    const match = file.split('/').at(-1) ?? file;
    const lessons =
      typeof guessed === 'object' ? [{ kind: 'file', match, keys: { columns: guessed } } as const] : [];
    this.table = await this.session.ask<'columns'>({ kind: 'columns', file, lessons });
  }
}

function isText({ keys }: FileDraft): boolean {
  return keys.some(({ key }) => key === 'line' || key === 'record');
}

customElements.define('file-rule', FileRule);
