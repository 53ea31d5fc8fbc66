import { html, nothing, type TemplateResult } from 'lit';
import { PageElement } from './page-element.ts';

/** A part of a view folded to one line that says what it holds; drawn only once it is unfolded. */
export class PartFold extends PageElement {
  static override properties = {
    summary: { attribute: false },
    content: { attribute: false },
    isOpen: { attribute: false },
  };
  declare summary: TemplateResult | string;
  declare content: () => TemplateResult;
  declare isOpen: boolean;

  constructor() {
    super();
    this.isOpen = false;
  }

  override render(): TemplateResult {
    return html`<details class="fold" ?open=${this.isOpen} @toggle=${this.onToggle}>
      <summary>${this.summary}</summary>
      ${this.isOpen ? this.content() : nothing}
    </details>`;
  }

  private onToggle({ target }: Event): void {
    if (target instanceof HTMLDetailsElement && target.parentElement === this) this.isOpen = target.open;
  }
}

customElements.define('part-fold', PartFold);
