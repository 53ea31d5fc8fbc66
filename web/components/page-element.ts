import { LitElement } from 'lit';

/** An element that stands in the page itself: one stylesheet, one order of focus, one document to print. */
export class PageElement extends LitElement {
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
}
