import { html, type TemplateResult } from 'lit';
import type { Session } from '../session.ts';
import { PageElement } from './page-element.ts';

/** Says how stamps are read that leave their zone, their order of day and month, or their year open. Fires `taught`. */
export class StampsForm extends PageElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;

  override render(): TemplateResult {
    return html`<details>
      <summary>Say how stamps are read</summary>
      <form class="fields" @submit=${this.onSubmit}>
        <label>Time zone, such as Europe/Lisbon<input name="zone" autocomplete="off" spellcheck="false" /></label>
        <label>Order of day and month
          <select name="order">
            <option value="">as the file settles it</option>
            <option value="day-first">day first</option>
            <option value="month-first">month first</option>
          </select></label>
        <label>Year of the first row, where none is printed<input name="year" inputmode="numeric" pattern="[0-9]{4}" autocomplete="off" /></label>
        <button type="submit">Add to the phrasebook and read again</button>
      </form>
    </details>`;
  }

  private async onSubmit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(event.target instanceof HTMLFormElement)) return;
    const form = new FormData(event.target);
    const said = (key: string): string | null => String(form.get(key) ?? '').trim() || null;
    const order = said('order');
    const year = said('year');
    try {
      const lesson = {
        kind: 'time',
        zone: said('zone'),
        order: order === 'day-first' || order === 'month-first' ? order : null,
        year: year === null ? null : Number(year),
      } as const;
      const detail = await this.session.ask<'teach'>({ kind: 'teach', lessons: [lesson] });
      this.dispatchEvent(new CustomEvent('taught', { bubbles: true, detail }));
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    }
  }
}

customElements.define('stamps-form', StampsForm);
