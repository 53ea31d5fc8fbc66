import { html, type TemplateResult } from 'lit';
import { type KeyGroup, keyGroups } from '../page-keys.ts';
import { PageElement } from './page-element.ts';

/** The keys of the page, in a panel that Escape closes. Fires `inputs` where a person switches those of single letters off or on. */
export class KeysHelp extends PageElement {
  static override properties = { isOn: { attribute: false } };
  declare isOn: boolean;

  constructor() {
    super();
    this.isOn = true;
  }

  /** Opens the panel; the focus goes back to where it was when it closes. */
  open(): void {
    this.querySelector('dialog')?.showModal();
  }

  override render(): TemplateResult {
    return html`<dialog aria-labelledby="keys-title">
      <h2 id="keys-title">Keys</h2>
      ${keyGroups.map(groupOf)}
      <p><label><input type="checkbox" .checked=${this.isOn} @change=${this.onSwitch} /> Keys of one character work anywhere on the page</label></p>
      <form method="dialog"><button>Close</button></form>
    </dialog>`;
  }

  private onSwitch({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const detail = { keys: target.checked ? null : 'off' };
    this.dispatchEvent(new CustomEvent('inputs', { bubbles: true, detail }));
  }
}

function groupOf({ title, keys }: KeyGroup): TemplateResult {
  return html`<h3>${title}</h3>
    <dl>${keys.map(([key, does]) => html`<dt><kbd>${key}</kbd></dt><dd>${does}</dd>`)}</dl>`;
}

customElements.define('keys-help', KeysHelp);
