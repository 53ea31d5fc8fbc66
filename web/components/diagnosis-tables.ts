import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { ladderOf, sayReference } from '../../src/report/ladder.ts';
import { outcomeWords, sayCause, sayLength } from '../../src/report/outcome-words.ts';
import { rankingRule, sayWeight } from '../../src/report/say-weight.ts';
import { columns, plain, type ShownRow, type ShownTable } from '../../src/report/shown-table.ts';
import { sayInstantBounds } from '../../src/report/words.ts';
import type { Attempt, Diagnosis, Point, RankedCause } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import { linesButton } from './lines-button.ts';
import './shown-table.ts';

/** How far the last attempt got, stage by stage, against those that worked. */
export function ladderTable(diagnosis: Diagnosis): TemplateResult {
  const last = diagnosis.attempts.at(-1);
  const rows = ladderOf(diagnosis).map((row) => {
    const reached = last?.stages.find((s) => s.stage === row.stage);
    const what = `The last attempt: ${row.stage}`;
    const cite = citing(what, reached?.evidence ?? []);
    return html`<tr @mouseenter=${cite} @focusin=${cite}>
      <th scope="row">${row.stage}</th>
      <td class="number">${row.ended === 0 ? '' : row.ended}</td>
      <td>${terminal(row.last)} ${reached === undefined ? nothing : linesButton(what, reached.evidence)}</td>
      <td>${terminal(row.reference)}</td>
    </tr>`;
  });
  return html`<div class="scroll"><table class="ladder">
      <thead><tr><th scope="col">Stage</th><th scope="col" class="number">Attempts that ended here</th><th scope="col">Time of the last attempt, with bounds</th><th scope="col">Successful attempts</th></tr></thead>
      <tbody>${rows}</tbody>
    </table></div>
    <p class="second">${terminal(sayReference(diagnosis))}</p>`;
}

/** The attempts since the trouble began, the newest first. */
export function attemptsTable({ attempts, from }: Diagnosis, zone: string): TemplateResult {
  if (attempts.length === 0) return html`<p>None was logged.</p>`;
  const row = (attempt: Attempt): ShownRow => {
    const { start, half, stages, outcome, evidence } = attempt;
    const cells = [
      sayInstantBounds(start, zone, from),
      half ?? 'not known',
      sayCause(attempt),
      stages.at(-1)?.stage ?? 'not logged',
      outcomeWords[outcome],
      sayLength(attempt),
    ];
    return { cells: cells.map(plain), lines: evidence };
  };
  const table: ShownTable = {
    columns: columns('Started', 'Half', 'Cause', 'Stage reached', 'Result', 'After#'),
    rows: attempts.toReversed().map(row),
    file: '',
    note: '',
  };
  return html`<shown-table .table=${table} .name=${'attempts'}></shown-table>`;
}

/** So many points for the most likely cause stand under the answer. */
const mostPoints = 2;

/** What speaks for the most likely cause, with its lines; nothing where no cause reaches a rank. */
export function mostLikely({ causes: [first] }: Diagnosis): TemplateResult | typeof nothing {
  if (first === undefined) return nothing;
  return html`<ul class="reasons">${first.for.slice(0, mostPoints).map(({ statement, evidence }) => {
    const cite = citing(first.title, evidence);
    return html`<li @mouseenter=${cite} @focusin=${cite}>${terminal(statement)} ${linesButton(first.title, evidence)}</li>`;
  })}</ul>`;
}

/** Each cause with what speaks for it, what against, and what to check next. */
export function causesList({ causes }: Diagnosis): TemplateResult {
  return html`${causes.map(causeBlock)}<p class="second">${rankingRule}</p>`;
}

function causeBlock({ rank, id, title, decibans, for: pro, against, next }: RankedCause): TemplateResult {
  return html`<h3 id=${`cause-${id}`}>${rank}. ${terminal(title)} (${id}): <span class=${rank === 1 ? 'inconclusive' : ''}>${sayWeight(decibans)}</span></h3>
    <div class="scroll"><table class="checks">
      <tbody>${pro.map((p) => pointRow('for', p))}${against.map((p) => pointRow('against', p))}
        <tr><th scope="row">check next</th><td>${terminal(next)}</td></tr></tbody>
    </table></div>`;
}

function pointRow(word: string, { statement, evidence }: Point): TemplateResult {
  const cite = citing(statement, evidence);
  return html`<tr @mouseenter=${cite} @focusin=${cite}>
    <th scope="row">${word}</th>
    <td>${terminal(statement)} ${linesButton(statement, evidence)}</td>
  </tr>`;
}

/** What was checked and is not supported, and what there was not enough data to judge. */
export function doubtedTable({ doubted, unjudged }: Diagnosis): TemplateResult {
  return html`<div class="scroll"><table class="checks">
    <thead><tr><th scope="col">Cause</th><th scope="col">Reason</th></tr></thead>
    <tbody>
      ${doubted.map(({ title, against }) => {
        const [first] = against;
        const cite = citing(title, first?.evidence ?? []);
        return html`<tr @mouseenter=${cite} @focusin=${cite}>
          <th scope="row">${terminal(title)}</th>
          <td>${first === undefined ? nothing : html`${terminal(first.statement)} ${linesButton(title, first.evidence)}`}</td>
        </tr>`;
      })}
      ${unjudged.map(({ title, missing }) => html`<tr><th scope="row">${terminal(title)}</th><td>not enough data to judge; missing: ${missing.join(', ')}</td></tr>`)}
    </tbody>
  </table></div>`;
}
