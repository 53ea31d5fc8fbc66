import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { classOf, type ShownCell, type ShownRow, type ShownTable } from '../../src/report/shown-table.ts';
import { sayCount } from '../../src/report/words.ts';
import type { Interval } from '../../src/vocabulary.ts';
import { citing, citingAt, isNear, leaving } from '../cite.ts';
import { saveText } from '../save-text.ts';
import { arranged, nextOrder, type Order, orderOf, orderText, tableCsv } from '../table-order.ts';
import { linesButton } from './lines-button.ts';
import { PageElement } from './page-element.ts';
import { pairName } from './pair-links.ts';

const none = {};
/** Rows that a table shows at first. */
const mostFirst = 12;

/**
 * A table in words: sorted by a press on a head, filtered by words where it is long, saved as it is shown. A row that names its
 * lines shows them in the margin. Of many rows the first, until all are asked for. Fires `inputs` with its filter and order,
 * under its name, and takes them from `inputs`.
 */
export class ShownTableElement extends PageElement {
  static override properties = {
    table: { attribute: false },
    name: {},
    near: { attribute: false },
    inputs: { attribute: false },
    isWhole: { state: true },
    filter: { state: true },
    order: { state: true },
  };
  declare table: ShownTable;
  /** What a file with what is shown is called; it tells the tables of a page apart. */
  declare name: string;
  /** Where the staff is pointed at: the rows of what happened there are marked. */
  declare near: Interval | null | undefined;
  declare inputs: Readonly<Record<string, string>>;
  declare isWhole: boolean;
  declare filter: string;
  declare order: Order;

  constructor() {
    super();
    this.name = 'table';
    this.inputs = none;
    this.isWhole = false;
    this.filter = '';
    this.order = null;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('table');
    // The same question asked anew keeps what a person chose; other columns have another order.
    if (before !== undefined && titlesOf(before) !== titlesOf(this.table)) this.order = null;
    if (!changed.has('inputs') && !changed.has('name')) return;
    this.filter = this.inputs[`${this.name}-filter`] ?? '';
    this.order = orderOf(this.inputs[`${this.name}-order`]);
  }

  override render(): TemplateResult {
    const { columns, rows, note } = this.table;
    const found = arranged(this.table, this.filter, this.order);
    const shown = this.isWhole ? found : found.slice(0, mostFirst);
    return html`${rows.length > mostFirst ? this.tools(found) : nothing}
      <div class="scroll"><table class=${`shown ${this.name}`}>
        <thead><tr>${columns.map((c, index) => this.head(c, index))}</tr></thead>
        <tbody>${shown.map((row) => this.row(row))}</tbody>
      </table></div>
      ${found.length === 0 ? html`<p>No row holds “${this.filter}”.</p>` : nothing}
      ${rows.length > mostFirst ? nothing : this.saving(found)}
      ${note === '' ? nothing : html`<p class="second">${note}</p>`}`;
  }

  /** They stand above the table, so that what has the focus does not move away under it. */
  private tools(found: readonly ShownRow[]): TemplateResult {
    const all = this.table.rows.length;
    const turn = (): void => {
      this.isWhole = !this.isWhole;
    };
    const onFilter = ({ target }: Event): void => {
      if (!(target instanceof HTMLInputElement)) return;
      this.filter = target.value;
      this.tell('filter', this.filter === '' ? null : this.filter);
    };
    const count = found.length === all ? `${all} rows` : `${found.length} of ${all} rows`;
    const few = found.length <= mostFirst;
    return html`<div class="second tools no-print">
      <label>Filter <input type="search" name="filter" autocomplete="off" .value=${this.filter} @input=${onFilter} /></label>
      <span role="status">${few || this.isWhole ? count : `${mostFirst} shown of ${count}`}</span>
      ${few ? nothing : html`<button type="button" class="link whole" @click=${turn}>${this.isWhole ? `Show the first ${mostFirst}` : `Show all ${found.length}`}</button>`}
      ${this.saving(found)}
    </div>`;
  }

  private saving(found: readonly ShownRow[]): TemplateResult {
    const save = (): void => saveText(`${this.name}-shown.csv`, tableCsv(this.table, found));
    return html`<button type="button" class="link lines save-table no-print" @click=${save}>Save ${sayCount(found.length, 'row')} (CSV)</button>`;
  }

  private head({ title, isNumber }: ShownTable['columns'][number], index: number): TemplateResult {
    const { order } = this;
    const way = order?.column !== index ? 'none' : order.isDescending ? 'descending' : 'ascending';
    const press = (): void => {
      this.order = nextOrder(order, index, isNumber);
      this.tell('order', orderText(this.order));
    };
    return html`<th scope="col" class=${isNumber ? 'number' : ''} aria-sort=${way === 'none' ? nothing : way}>
      <button type="button" class="link sort" @click=${press}>${title}</button>
    </th>`;
  }

  /** Where no inputs are given, none would be given back. */
  private tell(what: 'filter' | 'order', value: string | null): void {
    if (this.inputs === none) return;
    const detail = { [`${this.name}-${what}`]: value };
    this.dispatchEvent(new CustomEvent('inputs', { bubbles: true, detail }));
  }

  private row({ cells: [first, ...rest], lines, at }: ShownRow): TemplateResult {
    const title = first?.text ?? '';
    const cite = at === undefined ? citing(title, lines) : citingAt(title, lines, at);
    const leave = at === undefined ? nothing : leaving;
    const near = at !== undefined && isNear(at, this.near ?? null) ? 'near' : '';
    const inner = html`<th scope="row" class="long named">${cell(first)} ${lines.length === 0 ? nothing : linesButton(first?.text ?? '', lines)}</th>
      ${rest.map((c, index) => html`<td class=${this.alignment(index + 1)}>${cell(c)}</td>`)}`;
    return lines.length === 0
      ? html`<tr data-pair=${first?.pair ?? nothing}>${inner}</tr>`
      : html`<tr class=${near} data-pair=${first?.pair ?? nothing} @mouseenter=${cite} @focusin=${cite} @mouseleave=${leave} @focusout=${leave}>${inner}</tr>`;
  }

  private alignment(index: number): string {
    return this.table.columns[index]?.isNumber === true ? 'number' : '';
  }
}

function titlesOf({ columns }: ShownTable): string {
  return columns.map((c) => c.title).join('\n');
}

function cell(shown: ShownCell | undefined): TemplateResult | typeof nothing {
  if (shown === undefined) return nothing;
  if (shown.pair !== undefined) return pairName(shown.pair);
  const colour = classOf(shown);
  return colour === ''
    ? html`${terminal(shown.text)}`
    : html`<span class=${colour}>${terminal(shown.text)}</span>`;
}

customElements.define('shown-table', ShownTableElement);
