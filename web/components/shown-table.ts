import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import {
  classOf,
  mostRows,
  type ShownCell,
  type ShownRow,
  type ShownTable,
} from '../../src/report/shown-table.ts';
import { citing } from '../cite.ts';
import { linesButton } from './lines-button.ts';
import { PageElement } from './page-element.ts';
import { pairName } from './pair-links.ts';

/** A table in words; a row that names its lines shows them in the margin. Of very many rows the first, until all are asked for. */
export class ShownTableElement extends PageElement {
  static override properties = {
    table: { attribute: false },
    isWhole: { state: true },
  };
  declare table: ShownTable;
  declare isWhole: boolean;

  constructor() {
    super();
    this.isWhole = false;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('table')) this.isWhole = false;
  }

  override render(): TemplateResult {
    const { columns, rows, note } = this.table;
    const shown = this.isWhole ? rows : rows.slice(0, mostRows);
    return html`${rows.length > mostRows ? this.choice(rows.length) : nothing}
      <div class="scroll"><table class="shown">
        <thead><tr>${columns.map((c, index) => html`<th scope="col" class=${this.alignment(index)}>${c.title}</th>`)}</tr></thead>
        <tbody>${shown.map((row) => this.row(row))}</tbody>
      </table></div>
      ${note === '' ? nothing : html`<p class="second">${note}</p>`}`;
  }

  /** It stands above the table, so that what has the focus does not move away under it. */
  private choice(count: number): TemplateResult {
    const turn = (): void => {
      this.isWhole = !this.isWhole;
    };
    return html`<p class="second line">
      <span role="status">${this.isWhole ? `All ${count} rows.` : `The first ${mostRows} of ${count} rows.`}</span>
      <button type="button" class="link whole no-print" @click=${turn}>${this.isWhole ? `Show the first ${mostRows}` : `Show all ${count}`}</button>
    </p>`;
  }

  private row({ cells: [first, ...rest], lines }: ShownRow): TemplateResult {
    const cite = citing(first?.text ?? '', lines);
    const inner = html`<th scope="row" class="long named">${cell(first)} ${lines.length === 0 ? nothing : linesButton(first?.text ?? '', lines)}</th>
      ${rest.map((c, index) => html`<td class=${this.alignment(index + 1)}>${cell(c)}</td>`)}`;
    return lines.length === 0
      ? html`<tr data-pair=${first?.pair ?? nothing}>${inner}</tr>`
      : html`<tr data-pair=${first?.pair ?? nothing} @mouseenter=${cite} @focusin=${cite}>${inner}</tr>`;
  }

  private alignment(index: number): string {
    return this.table.columns[index]?.isNumber === true ? 'number' : '';
  }
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
