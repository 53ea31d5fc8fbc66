import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayCount } from '../../src/report/words.ts';
import type { SourceLine } from '../../src/vocabulary.ts';
import { type Cited, unpin } from '../cite.ts';
import type { LinesAround } from '../protocol.ts';
import { evidenceNote } from './evidence-note.ts';
import { PageElement } from './page-element.ts';

/** So many lines are shown of what is only looked at; of what is pinned all, so many more at a time. */
const [mostNotes, mostPinned] = [8, 40];
const reach = 2;
/** A pointer that passes over a table asks for nothing. */
const restMs = 120;

/** The log lines behind what is under the pointer or the focus, or was pinned, with the lines around them. */
export class SideNotes extends PageElement {
  static override properties = {
    cited: { attribute: false },
    read: { attribute: false },
    place: { attribute: false },
    notes: { state: true },
    most: { state: true },
    said: { state: true },
  };
  declare cited: Cited | null;
  declare read: (cited: readonly SourceLine[], reach: number) => Promise<readonly LinesAround[]>;
  /** Where what is pinned stands among all that has lines: `3 of 17`; `null` where nothing is pinned. */
  declare place: string | null;
  declare notes: ReadonlyMap<SourceLine, LinesAround>;
  declare most: number;
  declare said: string;
  private reading: Promise<void> = Promise.resolve();

  constructor() {
    super();
    this.cited = null;
    this.place = null;
    this.notes = new Map();
    this.most = mostNotes;
    this.said = '';
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('cited') && !changed.has('place')) return;
    const isOther = changed.has('cited') || (changed.get('place') === null) !== (this.place === null);
    if (isOther) this.most = this.place === null ? mostNotes : mostPinned;
    if (changed.has('cited')) this.said = '';
  }

  override updated(changed: PropertyValues<this>): void {
    if (this.cited === null || (!changed.has('cited') && !changed.has('most'))) return;
    void this.fill(this.cited, this.most);
  }

  private async fill(cited: Cited, most: number): Promise<void> {
    const isWanted = (): boolean => this.cited === cited && this.most === most;
    if (this.place === null) await new Promise((resolve) => setTimeout(resolve, restMs));
    // One question at a time: what was left meanwhile is never asked for.
    this.reading = this.reading.then(async () => {
      if (!isWanted()) return;
      const asked = cited.lines.slice(0, most).filter(({ text }) => text !== '');
      const found = await this.read(asked, reach);
      if (isWanted()) this.notes = new Map(found.flatMap((around, at) => pairOf(asked[at], around)));
    });
    await this.reading.catch((detail: unknown) => this.fail(detail));
  }

  private fail(detail: unknown): void {
    this.reading = Promise.resolve();
    this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail }));
  }

  override render(): TemplateResult {
    const { cited, most } = this;
    if (cited === null)
      return html`<h2>Evidence</h2>
        <p class="second">Point at a figure, a step or a mark, or move the focus to it: its log lines are shown here. Press the number of lines to keep them here; Escape releases them.</p>`;
    const more = cited.lines.length - most;
    return html`<h2>Evidence</h2>
      <p class="cited">${terminal(cited.title)}</p>
      ${this.place === null ? nothing : this.controls(cited, this.place)}
      ${cited.lines.slice(0, most).map((line) => evidenceNote(line, this.notes.get(line)))}
      ${more > 0 ? this.rest(more) : nothing}`;
  }

  private controls(cited: Cited, place: string): TemplateResult {
    const step = (by: number) => () =>
      this.dispatchEvent(new CustomEvent('step', { bubbles: true, detail: by }));
    return html`<p class="choices">
        <button type="button" class="copy" @click=${() => void this.copy(cited)}>Copy</button>
        <button type="button" class="previous" @click=${step(-1)}>Previous</button>
        <button type="button" class="next" @click=${step(1)}>Next</button>
        <button type="button" class="close" aria-keyshortcuts="Escape" @click=${() => unpin(this)}>Close</button>
      </p>
      <p class="second" role="status">${this.said === '' ? `${place}, ${sayCount(cited.lines.length, 'line')}` : this.said}</p>`;
  }

  private rest(more: number): TemplateResult {
    if (this.place === null)
      return html`<p class="second">and ${sayCount(more, 'further line')}: press the number of lines</p>`;
    const next = Math.min(more, mostPinned);
    const show = (): void => {
      this.most += mostPinned;
    };
    return html`<p><button type="button" class="more-lines" @click=${show}>Show ${next === more ? `the last ${next}` : `${next} of ${more} more`}</button></p>`;
  }

  /** The lines as they were read, each with its file and number. */
  private async copy({ title, lines }: Cited): Promise<void> {
    const text = [title, ...lines.map((l) => `${l.file}, line ${l.line}: ${l.text}`)].join('\n');
    try {
      await navigator.clipboard.writeText(`${text}\n`);
      this.said = `${sayCount(lines.length, 'line')} copied.`;
    } catch (error) {
      // Some browsers keep a page opened from disk from the clipboard.
      if (!(error instanceof Error)) throw error;
      this.said = 'The browser does not let this page use the clipboard. Select the lines and copy them.';
    }
  }
}

function pairOf(
  line: SourceLine | undefined,
  around: LinesAround,
): readonly (readonly [SourceLine, LinesAround])[] {
  return line === undefined ? [] : [[line, around]];
}

customElements.define('side-notes', SideNotes);
