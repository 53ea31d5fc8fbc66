import { html, nothing, type TemplateResult } from 'lit';
import type { Mark } from '../../src/pipeline.ts';
import { terminal } from '../../src/report/escape.ts';
import { sayNoFinding } from '../../src/report/not-known.ts';
import { statementInPage } from '../../src/report/settings.ts';
import { toldFindings } from '../../src/report/told-findings.ts';
import { sayDatedBounds, sayInstant, sayMeasure, sayWhen } from '../../src/report/words.ts';
import type { Finding, Swap, Verification } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import { linesButton } from './lines-button.ts';

const mostMarks = 200;

/** What happened to a pair, in the order of time. */
export function marksTable(marks: readonly Mark[], zone: string): TemplateResult {
  if (marks.length === 0) return html`<p>Nothing that is logged lies there.</p>`;
  const row = (mark: Mark): TemplateResult => {
    const words = mark.half === null ? mark.what : `half ${mark.half}: ${mark.what}`;
    const cite = citing(words, mark.evidence);
    const isLost = mark.what === 'partner lost';
    return html`<tr @mouseenter=${cite} @focusin=${cite}>
      <td class="clock">${sayDatedBounds(mark, zone)}</td>
      <td class=${isLost ? 'long inconclusive' : 'long'}>${terminal(words)} ${linesButton(words, mark.evidence)}</td>
    </tr>`;
  };
  return html`<div class="scroll"><table>
      <thead><tr><th scope="col">Time</th><th scope="col">What happened</th></tr></thead>
      <tbody>${marks.slice(0, mostMarks).map(row)}</tbody>
    </table></div>
    ${marks.length > mostMarks ? html`<p class="second">and ${marks.length - mostMarks} more: move the staff closer.</p>` : nothing}`;
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
  return html`<section>
    <h2>Findings and quality of the data</h2>
    ${findings.length === 0 ? html`<p>${sayNoFinding(verification)}</p>` : html`<ul>${findings.map((f) => item(f, zone))}</ul>`}
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
