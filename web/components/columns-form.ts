import { html, nothing, type TemplateResult } from 'lit';
import { matchFor } from '../../src/report/draft-phrasebook.ts';
import { terminal } from '../../src/report/escape.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { Survey, TriedRow, TriedTable } from '../../src/vocabulary.ts';
import {
  type ColumnChoice,
  columnProblems,
  columnRule,
  notUsed,
  sayMissing,
  sayOther,
} from '../column-choice.ts';
import { columns as columnKeys } from '../layouts.ts';
import { Refused, type Session } from '../session.ts';
import { PageElement } from './page-element.ts';

/** So many columns are shown before a person asks for more. */
const fewColumns = 16;
const longest = 60;

/** Which column of a table is what, by drop-downs; the first rows stand under them as they would be read. Fires `rule`. */
export class ColumnsForm extends PageElement {
  static override properties = {
    file: { attribute: false },
    table: { attribute: false },
    survey: { attribute: false },
    session: { attribute: false },
    chosen: { state: true },
    unit: { state: true },
    isAll: { state: true },
    said: { state: true },
  };
  declare file: string;
  declare table: TriedTable;
  declare survey: Survey | null;
  declare session: Session;
  declare chosen: ColumnChoice;
  /** Of all rows, where no column names it. */
  declare unit: string;
  declare isAll: boolean;
  /** What is wrong with the whole, or was done. */
  declare said: string;

  constructor() {
    super();
    this.unit = '';
    this.isAll = false;
    this.said = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.chosen = this.table.keys;
    this.unit = this.table.unit ?? '';
  }

  override render(): TemplateResult {
    const { table, chosen } = this;
    const problems = columnProblems(chosen, table);
    const shown = this.isAll ? table.names : table.names.slice(0, fewColumns);
    const missing = sayMissing(table);
    const isUnitMissing = table.missing.includes('unit');
    return html`<form @submit=${this.onSubmit}>
      <div class="scroll"><table class="columns-chosen">
        <thead><tr><th scope="col">Column</th><th scope="col">First value</th><th scope="col">Is</th></tr></thead>
        <tbody>${shown.map((name, i) => this.column(name, i, problems[i] ?? null))}</tbody>
      </table></div>
      ${shown.length < table.names.length ? html`<p><button type="button" id="all-columns" @click=${() => this.lengthen()}>Show all ${table.names.length} columns</button></p>` : nothing}
      <p><label>Unit of all rows, where no column names it <input name="unit" .value=${this.unit} @input=${this.onUnit} aria-describedby="unit-said" aria-invalid=${isUnitMissing} spellcheck="false" autocomplete="off" placeholder="RO1-A" /></label>
        <span class="inconclusive" id="unit-said">${isUnitMissing ? 'No column names a unit: choose one, or give it here.' : ''}</span></p>
      ${this.rows()}
      <p role="status" class=${missing === null ? 'second' : 'inconclusive'} id="columns-said">${this.said === '' ? (missing ?? '') : this.said}</p>
      <p class="choices"><button type="submit">Add rule</button></p>
    </form>`;
  }

  private column(name: string, at: number, problem: string | null): TemplateResult {
    const current = this.chosen[at] ?? '';
    const option = (value: string, words = value): TemplateResult =>
      html`<option value=${value} ?selected=${current === value}>${words}</option>`;
    const id = `column-said-${at}`;
    return html`<tr>
      <th scope="row" class="long"><bdi>${terminal(name.slice(0, longest))}</bdi></th>
      <td class="long"><code><bdi>${terminal((this.table.examples[at] ?? '').slice(0, longest))}</bdi></code></td>
      <td><select name="column" aria-label=${`Column ${terminal(name.slice(0, longest))} is`} aria-describedby=${id} aria-invalid=${problem !== null} @change=${(event: Event) => this.onColumn(event, at)}>
          ${option('', sayOther(this.chosen))}${columnKeys.map((key) => option(key))}${option(notUsed)}
        </select> <span class="inconclusive" id=${id}>${problem === null ? '' : terminal(problem)}</span></td>
    </tr>`;
  }

  private rows(): TemplateResult | typeof nothing {
    const { rows } = this.table;
    if (rows.length === 0) return nothing;
    return html`<div class="scroll"><table class="preview">
      <caption class="second">The first ${rows.length} rows as they would be read, times in UTC</caption>
      <thead><tr><th scope="col" class="number">Line</th><th scope="col">Time</th><th scope="col">Unit</th><th scope="col">Says</th></tr></thead>
      <tbody>${rows.map(rowRead)}</tbody>
    </table></div>`;
  }

  private onColumn({ target }: Event, at: number): void {
    if (!(target instanceof HTMLSelectElement)) return;
    this.chosen = this.chosen.with(at, target.value);
    void this.read();
  }

  private onUnit({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    this.unit = target.value;
    void this.read();
  }

  private rule(): ReturnType<typeof columnRule> {
    const match = matchFor(this.file, this.survey?.files ?? [{ file: this.file }]);
    return columnRule(this.file, match, this.table.names, this.chosen, this.unit);
  }

  /** Reads the first rows once more with what is chosen. */
  private async read(): Promise<void> {
    const { chosen, unit, file } = this;
    this.said = '';
    try {
      const { lessons } = this.rule();
      const table = await this.session.ask<'columns'>({ kind: 'columns', file, lessons });
      if (table !== null && chosen === this.chosen && unit === this.unit) this.table = table;
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      this.said = `${error.refusal.what} ${error.refusal.fix}`;
    }
  }

  private lengthen(): void {
    this.isAll = true;
  }

  private async onSubmit(event: Event): Promise<void> {
    event.preventDefault();
    await this.read();
    const isWrong = columnProblems(this.chosen, this.table).some((problem) => problem !== null);
    if (this.said !== '' || isWrong || this.table.missing.length > 0) {
      this.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
      return;
    }
    this.said = 'Added to the rules below.';
    this.dispatchEvent(new CustomEvent('rule', { bubbles: true, detail: [this.rule()] }));
  }
}

function rowRead({ line, time, unit, pair, half, says, more, problem }: TriedRow): TemplateResult {
  if (problem !== null)
    return html`<tr><td class="number">${line}</td><td colspan="3" class="inconclusive">Rejected: ${terminal(problem)}</td></tr>`;
  const known = pair === null ? 'no pair yet' : half === null ? `pair ${pair}` : `half ${half} of ${pair}`;
  return html`<tr>
    <td class="number">${line}</td>
    <td class="clock">${time === null ? '' : sayInstant(time, 'UTC')}</td>
    <td class="long"><bdi>${terminal(unit.slice(0, longest))}</bdi>${unit === '' ? '' : ': '}${terminal(known)}</td>
    <td class="long">${says.map(({ text, means }) => html`<div><code><bdi>${terminal(text.slice(0, 2 * longest))}</bdi></code>: ${means === null ? html`<span class="second">not recognised</span>` : terminal(means)}</div>`)}${more === 0 ? nothing : html`<div class="second">and ${more} more</div>`}</td>
  </tr>`;
}

customElements.define('columns-form', ColumnsForm);
