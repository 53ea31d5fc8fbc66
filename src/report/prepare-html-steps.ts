import type { HoldPoint, HoldStatus, WorkSheet, WorkStep } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { cite } from './cite.ts';
import { html } from './escape.ts';
import type { EvidenceList } from './evidence.ts';
import { section } from './html-section.ts';
import { clipped, isBehind, isOfLog } from './prepare-extent.ts';
import {
  expectedCells,
  fiveMinuteRule,
  holdPointRule,
  holdPointWords,
  sayStep,
  shortLimit,
} from './prepare-words.ts';
import type { ReportOptions } from './report-options.ts';
import { sayInstant } from './words.ts';

/** The steps with their hold points, and room for clock and initials beside each. */
export function stepsSection(sheet: WorkSheet, evidence: EvidenceList, { zone }: ReportOptions): string {
  const rows = sheet.steps.map((step, index) => stepRows(sheet, step, index + 1, evidence));
  return section(
    'work-steps',
    'Steps',
    `<div class="scroll"><table class="filled">
<thead><tr><th scope="col"></th><th scope="col">Step</th><th scope="col" class="number">Limit</th><th scope="col" class="number">Median here</th><th scope="col" class="number">95th percentile</th><th scope="col" class="number">n</th><th scope="col">Clock</th><th scope="col">Initials</th></tr></thead>
<tbody>${rows.join('\n')}</tbody>
</table></div>
<p><strong>${fiveMinuteRule}</strong> ${holdPointRule} The log is that of ${sayInstant(sheet.asOf.time, zone)}.</p>
<p>${cautions.map(html).join(' ')}</p>`,
  );
}

const byHand = '<td class="by-hand"></td><td class="by-hand"></td>';

function stepRows(sheet: WorkSheet, step: WorkStep, number: number, evidence: EvidenceList): string {
  const { limitSeconds, holdPoint } = step;
  const cells = [shortLimit(limitSeconds), ...expectedCells(step)].map((c) => `<td class="number">${c}</td>`);
  const row = `<tr><td class="number">${number}</td><td class="long">${html(clipped(sayStep(step), 'item'))}</td>${cells.join('')}${byHand}</tr>`;
  if (holdPoint === null) return row;
  const hold = holdRow(holdPoint, isOfLog(step, sheet) ? evidence : null);
  return isBehind(step) ? `${row}\n${hold}` : `${hold}\n${row}`;
}

/** What must be so, each to be ticked by hand; with `evidence` how the log has it. */
function holdRow({ id, status, conditions }: HoldPoint, evidence: EvidenceList | null): string {
  const list = conditions.map((c) => {
    const lines = evidence === null ? '' : cite(evidence, c.evidence);
    const state = evidence === null || c.status === 'met' ? '' : `${stateWord(c.status)}: `;
    return `☐&nbsp;${state}${html(clipped(c.statement, 'item'))}${lines}`;
  });
  const word = evidence === null ? '' : `, by the log: ${stateWord(status)}`;
  return `<tr class="hold"><td></td><td colspan="5" class="long"><p><strong>Hold point ${holdPointWords[id]}</strong>${word}</p><p>${list.join(' ')}</p></td>${byHand}</tr>`;
}

function stateWord(status: HoldStatus): string {
  return status === 'stop' ? '<span class="fail">stop</span>' : status;
}

/** Lines to sign on. */
export function signSection({ job }: WorkSheet): string {
  return section(
    'sign-off',
    'Sign-off',
    `<div class="sign">${signLine('Done by', job?.technician)}${signLine('Reviewed by', job?.reviewer)}</div>`,
  );
}

function signLine(role: string, name: string | undefined): string {
  return `<div>${role}${name === undefined ? ' (name)' : `: ${html(clipped(name))}`}</div><div>Signature</div><div>Date</div>`;
}
