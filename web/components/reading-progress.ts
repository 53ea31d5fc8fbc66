import { html, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { PageElement } from './page-element.ts';

/** How far the reading of one file is. */
export interface FileProgress {
  readonly name: string;
  readonly size: number;
  readonly bytes: number;
  readonly rows: number;
  readonly state: 'waiting' | 'reading' | 'read';
}

/** A line and a bar per file, the rows so far, and a way out. Fires `cancel`. */
export class ReadingProgress extends PageElement {
  static override properties = { files: { attribute: false } };
  declare files: readonly FileProgress[];

  constructor() {
    super();
    this.files = [];
  }

  override render(): TemplateResult {
    const rows = this.files.reduce((sum, f) => sum + f.rows, 0);
    const read = this.files.filter((f) => f.state === 'read').length;
    return html`<h1 class="lead" role="status">
        Reading ${this.files.length === 1 ? 'one file' : `${this.files.length} files`}: ${read} read,
        ${rows.toLocaleString('en')} rows so far.
      </h1>
      <table class="progress">
        <tbody>
          ${this.files.map(
            (f) => html`<tr>
              <th scope="row" class="long">${terminal(f.name)}</th>
              <td><progress max="100" value=${shareOf(f)} aria-label=${`Share of ${f.name} that was read`}></progress></td>
              <td class="number">${f.state === 'waiting' ? 'waiting' : `${f.rows.toLocaleString('en')} rows`}</td>
            </tr>`,
          )}
        </tbody>
      </table>
      <p><button type="button" id="cancel" @click=${this.onCancel}>Cancel</button></p>`;
  }

  private onCancel(): void {
    this.dispatchEvent(new CustomEvent('cancel', { bubbles: true }));
  }
}

function shareOf({ state, size, bytes }: FileProgress): number {
  if (state === 'read') return 100;
  return size === 0 ? 0 : Math.min(100, (bytes / size) * 100);
}

/** The files after another piece of one was read. */
export function progressed(
  all: readonly FileProgress[],
  name: string,
  bytes: number,
  rows: number,
): readonly FileProgress[] {
  // A member of an archive is named with the archive before it.
  const isOf = (f: FileProgress): boolean => f.name === name || name.startsWith(`${f.name}/`);
  const at = all.findIndex(isOf);
  return all.map((f, index): FileProgress => {
    if (isOf(f)) return { ...f, bytes, rows: Math.max(rows, f.rows), state: 'reading' };
    return index < at && f.state === 'reading' ? { ...f, state: 'read' } : f;
  });
}

customElements.define('reading-progress', ReadingProgress);
