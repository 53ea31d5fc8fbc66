import { html, type PropertyValues, type TemplateResult } from 'lit';
import { sayCount } from '../../src/report/words.ts';
import type { SourceLine } from '../../src/vocabulary.ts';
import { cite, pin, unpin } from '../cite.ts';
import { PageElement } from './page-element.ts';

/** How the keyboard comes to the lines behind something: the focus shows them, a press pins them or lets them go. */
export class LinesButton extends PageElement {
  static override properties = {
    of: { attribute: false },
    // The same lines read once more are the same.
    lines: { attribute: false, hasChanged: isOther },
    isPinned: { state: true },
  };
  /** What the lines are behind. */
  declare of: string;
  declare lines: readonly SourceLine[];
  /** Set by the page. */
  declare isPinned: boolean;

  constructor() {
    super();
    this.isPinned = false;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    // The place was taken by something else: what is pinned is no longer here.
    if (this.isPinned && changed.has('lines')) unpin(this);
  }

  override render(): TemplateResult {
    return html`<button type="button" class="link lines" aria-pressed=${this.isPinned} @focus=${this.onFocus} @click=${this.onClick}>${sayCount(this.lines.length, 'line')}</button>`;
  }

  /** Pins its lines, as a press does. */
  press(isByKey: boolean): void {
    pin(this, { title: this.of, lines: this.lines, isByKey });
  }

  private onFocus(): void {
    cite(this, this.of, this.lines);
  }

  private onClick({ detail }: MouseEvent): void {
    if (this.isPinned) unpin(this);
    // A press by a key counts no clicks.
    else this.press(detail === 0);
  }
}

function isOther(now: readonly SourceLine[], before: readonly SourceLine[] | undefined): boolean {
  if (now === before) return false;
  return (
    before?.length !== now.length ||
    now.some(({ file, line, text }, index) => {
      const own = before[index];
      return own === undefined || own.file !== file || own.line !== line || own.text !== text;
    })
  );
}

customElements.define('lines-button', LinesButton);

/** The button to the lines behind `of`. */
export function linesButton(of: string, lines: readonly SourceLine[]): TemplateResult {
  return html`<lines-button .of=${of} .lines=${lines}></lines-button>`;
}
