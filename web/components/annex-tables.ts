import { html, nothing, type TemplateResult } from 'lit';
import type { Mark } from '../../src/pipeline.ts';
import { terminal } from '../../src/report/escape.ts';
import { sayNoFinding } from '../../src/report/not-known.ts';
import { statementInPage } from '../../src/report/settings.ts';
import { abnormal, columns, plain, type ShownRow, type ShownTable } from '../../src/report/shown-table.ts';
import { toldFindings } from '../../src/report/told-findings.ts';
import { sayCount, sayDatedBounds, sayInstant, sayMeasure, sayWhen } from '../../src/report/words.ts';
import type { Finding, Interval, Swap, Verification } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import { linesButton } from './lines-button.ts';
import './shown-table.ts';

/** What happened to a pair, in the order of time. What is `near` the place that is pointed at is marked. */
export function marksTable(marks: readonly Mark[], zone: string, near: Interval | null): TemplateResult {
  if (marks.length === 0) return html`<p>Nothing that is logged lies there.</p>`;
  const row = (mark: Mark): ShownRow => {
    const { half, what, evidence } = mark;
    const said = what === 'partner lost' ? abnormal(what, 'warning') : plain(what);
    return {
      cells: [plain(sayDatedBounds(mark, zone)), plain(half ?? 'pair'), said],
      lines: evidence,
      at: mark,
    };
  };
  const table: ShownTable = {
    columns: columns('Time', 'Half', 'What happened'),
    rows: marks.map(row),
    file: '',
    note: '',
  };
  return html`<shown-table .table=${table} .name=${'what-happened'} .near=${near}></shown-table>`;
}

/** How long the pair had no ready partner during the swap. */
export function exposureLine({ exposure }: Swap, zone: string): TemplateResult {
  const total = sayMeasure({ ...exposure, censored: false, outcome: null });
  const spans = exposure.spans.map((s) => `${sayInstant(s.from, zone)} to ${sayInstant(s.to, zone)}`);
  return html`<p>Without a ready partner from the first removal to the end: ${total}.</p>
    ${spans.length === 0 ? nothing : html`<p class="second">${spans.join('; ')}.</p>`}`;
}

/** Findings of the pair in the time of the swap, and what was odd in the files; the gravest first. */
export function findingsSection(verification: Verification, swap: Swap, zone: string): TemplateResult {
  const findings = toldFindings(verification, swap);
  const told = findings.filter(({ severity }) => severity !== 'info');
  const notes = findings.filter(({ severity }) => severity === 'info');
  const list = (all: readonly Finding[]): TemplateResult => html`<ul>${all.map((f) => item(f, zone))}</ul>`;
  return html`<section id="swap-findings">
    <h2>Findings and data quality</h2>
    ${findings.length === 0 ? html`<p>${sayNoFinding(verification)}</p>` : nothing}
    ${told.length === 0 ? nothing : list(told)}
    ${notes.length === 0 ? nothing : html`<details class="fold"><summary>${sayCount(notes.length, 'note')}. Show</summary>${list(notes)}</details>`}
  </section>`;
}

function item(finding: Finding, zone: string): TemplateResult {
  const cite = citing(finding.statement, finding.evidence);
  const look = finding.severity === 'critical' ? 'fail' : 'inconclusive';
  return html`<li @mouseenter=${cite} @focusin=${cite}>
    ${finding.severity === 'info' ? nothing : html`<span class=${look}>${finding.severity}:</span> `}${sayWhen(finding, zone)}${terminal(statementInPage(finding))}
    ${linesButton(finding.statement, finding.evidence)}
  </li>`;
}
