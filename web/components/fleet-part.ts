import { html, nothing, type TemplateResult } from 'lit';
import { type FleetSection, howComputedTitle } from '../../src/report/fleet-section.ts';
import type { ShownCell, ShownRow } from '../../src/report/shown-table.ts';
import { sayCount } from '../../src/report/words.ts';
import type { Inputs } from '../address.ts';
import './chart-row.ts';
import './part-fold.ts';
import './shown-table.ts';

/** One question of the review under its head: folded to what its table holds, unless it `isOpen`. */
export function fleetPart(part: FleetSection, isOpen: boolean, inputs: Inputs): TemplateResult {
  return html`<section id=${`fleet-${part.id}`} class="part">
    <h2>${part.title}</h2>
    <part-fold .summary=${summaryOf(part)} .content=${() => contentOf(part, inputs)} .isOpen=${isOpen}></part-fold>
  </section>`;
}

function contentOf({ id, figures, table, howComputed }: FleetSection, inputs: Inputs): TemplateResult {
  return html`${figures.length === 0 ? nothing : html`<chart-row .figures=${figures}></chart-row>`}
    <shown-table .table=${table} .name=${`fleet-${id}`} .inputs=${inputs}></shown-table>
    <details class="second computed"><summary>${howComputedTitle}</summary><p>${howComputed}</p></details>`;
}

function summaryOf({ figures, table }: FleetSection): TemplateResult {
  const charts = figures.length === 0 ? '' : `, ${sayCount(figures.length, 'chart')}`;
  const odd = table.rows.map(worstOf).filter((severity) => severity !== null);
  const look = odd.includes('critical') ? 'fail' : 'inconclusive';
  return html`${sayCount(table.rows.length, 'row')}${odd.length === 0 ? nothing : html`, <span class=${look}>${odd.length} abnormal</span>`}${charts}`;
}

/** The gravest severity of the cells of a row; `null` where all are as they should be. */
function worstOf({ cells }: ShownRow): ShownCell['severity'] {
  const severities = cells.map((c) => c.severity);
  if (severities.includes('critical')) return 'critical';
  return severities.includes('warning') ? 'warning' : null;
}
