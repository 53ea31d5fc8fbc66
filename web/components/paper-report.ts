import { style } from '../../src/report/style.ts';

/** What is printed instead of the page: a report, with its own style and ids apart from those of the page. Never on the screen. */
export class PaperReport extends HTMLElement {
  private readonly root = this.attachShadow({ mode: 'closed' });

  /** `html` is a report as it is saved; `null`: the page itself is printed. */
  show(html: string | null): void {
    document.documentElement.classList.toggle('on-paper', html !== null);
    if (html === null) {
      this.root.replaceChildren();
      return;
    }
    // What is parsed so runs no script; a report holds none.
    const { body } = new DOMParser().parseFromString(html, 'text/html');
    const sheet = document.createElement('style');
    sheet.textContent = style;
    this.root.replaceChildren(sheet, ...body.childNodes);
  }
}

customElements.define('paper-report', PaperReport);
