import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { ShownCell, ShownRow, ShownTable } from '../../src/report/shown-table.ts';
import { citing } from '../cite.ts';
import { linesButton } from './swap-tables.ts';

/** A table in words; a row that names its lines shows them in the margin. */
export function shownTable({ columns, rows, note }: ShownTable): TemplateResult {
  const classOf = (index: number): string => (columns[index]?.isNumber === true ? 'number' : '');
  const body = ({ cells: [first, ...rest], lines }: ShownRow): TemplateResult => {
    const cite = citing(first?.text ?? '', lines);
    const inner = html`<th scope="row" class="long named">${cell(first)} ${lines.length === 0 ? nothing : linesButton(lines, cite)}</th>
      ${rest.map((c, index) => html`<td class=${classOf(index + 1)}>${cell(c)}</td>`)}`;
    return lines.length === 0
      ? html`<tr>${inner}</tr>`
      : html`<tr @mouseenter=${cite} @focusin=${cite}>${inner}</tr>`;
  };
  return html`<div class="scroll"><table class="shown">
      <thead><tr>${columns.map((c, index) => html`<th scope="col" class=${classOf(index)}>${c.title}</th>`)}</tr></thead>
      <tbody>${rows.map(body)}</tbody>
    </table></div>
    ${note === '' ? nothing : html`<p class="second">${note}</p>`}`;
}

function cell(shown: ShownCell | undefined): TemplateResult | typeof nothing {
  if (shown === undefined) return nothing;
  return shown.isAbnormal
    ? html`<span class="fail">${terminal(shown.text)}</span>`
    : html`${terminal(shown.text)}`;
}
