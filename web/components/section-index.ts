import { html, nothing, type TemplateResult } from 'lit';
import { PageElement } from './page-element.ts';

interface Entry {
  readonly section: HTMLElement;
  readonly title: string;
}

/** A section counts as read from where its head comes so near to the top of the window, in pixels. */
const nearTop = 140;

/** The sections of the view that is shown, with the one that is read marked; a press goes there. Folded while `isFolded`. */
export class SectionIndex extends PageElement {
  static override properties = {
    isFolded: { attribute: false },
    entries: { state: true },
    current: { state: true },
  };
  declare isFolded: boolean;
  declare entries: readonly Entry[];
  declare current: HTMLElement | null;
  private waits = false;
  private readonly changes = new MutationObserver(() => this.lookSoon());
  private readonly onScroll = (): void => this.lookSoon();

  constructor() {
    super();
    this.isFolded = false;
    this.entries = [];
    this.current = null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    const main = document.querySelector('main');
    if (main !== null) this.changes.observe(main, { childList: true, subtree: true });
    window.addEventListener('scroll', this.onScroll, { passive: true });
    this.lookSoon();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.changes.disconnect();
    window.removeEventListener('scroll', this.onScroll);
  }

  override render(): TemplateResult | typeof nothing {
    if (this.entries.length < 2) return nothing;
    const list = html`<ul>${this.entries.map((entry) => this.item(entry))}</ul>`;
    return this.isFolded
      ? html`<details class="sections"><summary>Sections</summary>${list}</details>`
      : html`<nav class="sections" aria-label="Sections"><h2>Sections</h2>${list}</nav>`;
  }

  private item({ section, title }: Entry): TemplateResult {
    const isCurrent = section === this.current;
    return html`<li><button type="button" class="link" aria-current=${isCurrent ? 'true' : nothing} @click=${() => showSection(section)}>${title}</button></li>`;
  }

  /** Once for each picture that the browser draws, whatever happens in between. */
  private lookSoon(): void {
    if (this.waits) return;
    this.waits = true;
    requestAnimationFrame(() => {
      this.waits = false;
      this.look();
    });
  }

  private look(): void {
    const found = sectionsShown();
    const isSame =
      found.length === this.entries.length &&
      found.every(({ section, title }, index) => {
        const own = this.entries[index];
        return own?.section === section && own.title === title;
      });
    if (!isSame) this.entries = found;
    const above = found.filter(({ section }) => section.getBoundingClientRect().top < nearTop);
    this.current = above.at(-1)?.section ?? null;
  }
}

function sectionsShown(): readonly Entry[] {
  return [...document.querySelectorAll('main section[id] > h2')].flatMap((head) => {
    const section = head.parentElement;
    const title = head.textContent.trim();
    return section === null || !head.checkVisibility() ? [] : [{ section, title }];
  });
}

/** Unfolds a section, and moves sight and focus to it. */
function showSection(section: HTMLElement): void {
  const fold = section.querySelector(':scope > details.fold');
  if (fold instanceof HTMLDetailsElement) fold.open = true;
  section.scrollIntoView();
  section.tabIndex = -1;
  section.focus({ preventScroll: true });
}

customElements.define('section-index', SectionIndex);
