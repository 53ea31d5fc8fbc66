import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayCount } from '../../src/report/words.ts';
import { amountOf, type ReadingNow, sayAmount } from '../reading-now.ts';
import { PageElement } from './page-element.ts';

/** Of many files that failed the first are named. */
const mostFailures = 8;

/** How far a reading is: bytes, per cent and time left over all, the file that is read, what failed, and a way out. Fires `cancel`. */
export class ReadingProgress extends PageElement {
  static override properties = { now: { attribute: false } };
  declare now: ReadingNow;

  override render(): TemplateResult {
    const { now } = this;
    const { percent } = amountOf(now);
    const toRead = now.files.filter(({ state }) => state !== 'kept');
    const rows = toRead.reduce((sum, f) => sum + f.rows, 0);
    const current = now.files.find(({ id }) => id === now.current);
    return html`<h1 class="lead" role="status">${now.isTogether ? 'Building the timelines' : `Reading ${sayCount(toRead.length, 'file')}`}${this.sayKept()}</h1>
      <p><progress max="100" value=${percent} aria-label="Share of all bytes that was read"></progress></p>
      <p class="amount">${sayAmount(now, performance.now())}; ${sayRows(rows)} so far.</p>
      <p class="second long">${current === undefined || now.isTogether ? nothing : html`Now ${terminal(current.name)}, ${sayRows(current.rows)}`}</p>
      ${this.failures()}
      <p><button type="button" id="cancel" @click=${this.onCancel}>Cancel</button></p>`;
  }

  private sayKept(): string {
    const { files, isTogether } = this.now;
    const kept = files.filter(({ state }) => state === 'kept').length;
    const read = files.filter(({ state }) => state === 'read').length;
    const done = isTogether || read === 0 ? '' : `, ${read.toLocaleString('en')} read`;
    return kept === 0
      ? `${done}.`
      : `${done}; ${sayCount(kept, 'file')} ${kept === 1 ? 'is' : 'are'} unchanged and not read again.`;
  }

  private failures(): TemplateResult | typeof nothing {
    const { failures } = this.now;
    if (failures.length === 0) return nothing;
    const more = failures.length - mostFailures;
    return html`<p>Not read so far:</p>
      <ul>
        ${failures.slice(0, mostFailures).map(({ where, what }) => html`<li class="long"><b>${terminal(where)}</b>: ${terminal(what)}</li>`)}
        ${more > 0 ? html`<li>and ${more.toLocaleString('en')} more</li>` : nothing}
      </ul>`;
  }

  private onCancel(): void {
    this.dispatchEvent(new CustomEvent('cancel', { bubbles: true }));
  }
}

function sayRows(count: number): string {
  return count === 1 ? 'one row' : `${count.toLocaleString('en')} rows`;
}

customElements.define('reading-progress', ReadingProgress);
