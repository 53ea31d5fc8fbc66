import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { SourceLine } from '../../src/vocabulary.ts';
import type { Cited } from '../cite.ts';
import type { LinesAround } from '../protocol.ts';
import { PageElement } from './page-element.ts';

const mostNotes = 8;
const reach = 2;
/** A pointer that passes over a table asks for nothing. */
const restMs = 120;

/** The margin: the log lines behind what is under the cursor or the focus, with the lines around them. */
export class SideNotes extends PageElement {
  static override properties = {
    cited: { attribute: false },
    read: { attribute: false },
    notes: { state: true },
  };
  declare cited: Cited | null;
  declare read: (at: SourceLine, reach: number) => Promise<LinesAround>;
  declare notes: ReadonlyMap<SourceLine, LinesAround>;

  constructor() {
    super();
    this.cited = null;
    this.notes = new Map();
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has('cited') && this.cited !== null) void this.fill(this.cited);
  }

  private async fill(cited: Cited): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, restMs));
    if (this.cited !== cited) return;
    const shown = cited.lines.slice(0, mostNotes).filter((line) => line.text !== '');
    const read = await Promise.all(
      shown.map(async (line) => [line, await this.read(line, reach).catch(() => null)] as const),
    );
    if (this.cited !== cited) return;
    // A file that vanished leaves the line itself, which is kept.
    this.notes = new Map(read.flatMap(([line, around]) => (around === null ? [] : [[line, around]])));
  }

  override render(): TemplateResult {
    const { cited } = this;
    if (cited === null)
      return html`<h2>Evidence</h2>
        <p class="second">Point at a figure, a step or a mark, or move the focus to it: the log lines it rests on stand here.</p>`;
    const more = cited.lines.length - mostNotes;
    return html`<h2>Evidence</h2>
      <p class="cited">${terminal(cited.title)}</p>
      ${cited.lines.slice(0, mostNotes).map((line) => this.note(line))}
      ${more > 0 ? html`<p class="second">and ${more} further ${more === 1 ? 'line' : 'lines'}</p>` : nothing}`;
  }

  private note(line: SourceLine): TemplateResult {
    const around = this.notes.get(line) ?? { first: line.line, lines: [line.text] };
    return html`<figure class="note">
      <figcaption>${terminal(line.file)}, line ${line.line}</figcaption>
      <ol start=${around.first}>
        ${around.lines.map(
          (text, index) =>
            html`<li value=${around.first + index} class=${around.first + index === line.line ? 'cited-line' : 'around'}>
              <code>${terminal(text)}</code>
            </li>`,
        )}
      </ol>
    </figure>`;
  }
}

customElements.define('side-notes', SideNotes);
