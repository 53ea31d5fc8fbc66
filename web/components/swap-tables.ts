import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { statusWords } from '../../src/report/status-words.ts';
import { sayInstantBounds, sayMeasure } from '../../src/report/words.ts';
import type { Interval, Step, Swap } from '../../src/vocabulary.ts';
import { citing, citingAt, isNear, leaving } from '../cite.ts';
import { linesButton } from './lines-button.ts';

/** So many reasons stand under the verdict; further ones are folded. */
const mostReasons = 4;

/** Why the verdict is what it is: each check that did not pass, the failed ones first, as a link to its row, with its lines. */
export function reasonsList({ checks }: Swap): TemplateResult {
  const failed = checks.filter((c) => c.status === 'fail');
  const open = checks.filter((c) => c.status !== 'fail' && c.status !== 'pass');
  if (failed.length + open.length === 0) return html`<p>All ${checks.length} checks pass.</p>`;
  // What is not settled is the reason only where nothing failed.
  const first = (failed.length > 0 ? failed : open).slice(0, mostReasons);
  const more = [...failed, ...open].slice(first.length);
  return html`<ul class="reasons">${first.map(reason)}</ul>
    ${more.length === 0 ? nothing : html`<details class="more-reasons"><summary>${more.length} more ${more.length === 1 ? 'check' : 'checks'} did not pass. Show</summary><ul class="reasons">${more.map(reason)}</ul></details>`}`;
}

function reason(c: Swap['checks'][number]): TemplateResult {
  const cite = citing(c.title, c.evidence);
  return html`<li @mouseenter=${cite} @focusin=${cite}>
    <button type="button" class=${`link ${c.status}`} @click=${() => goTo(`check-${c.id}`)}>${c.title}: ${statusWords[c.status]}.</button>
    ${terminal(c.statement)} ${linesButton(c.title, c.evidence)}
  </li>`;
}

/** Moves sight and focus to an element of the page, and unfolds what it is folded in. */
function goTo(id: string): void {
  const row = document.getElementById(id);
  const fold = row?.closest('details');
  if (fold !== null && fold !== undefined) fold.open = true;
  row?.scrollIntoView({ block: 'center' });
  row?.querySelector('button')?.focus({ preventScroll: true });
}

/** Model, serial and firmware of each half that was replaced. */
export function halvesTable({ halves }: Swap): TemplateResult {
  const heads = ['Model before', 'after', 'Serial before', 'after', 'Firmware before', 'found', 'after'];
  const cell = (text: string | null): TemplateResult =>
    html`<td class="long">${text === null ? 'not known' : terminal(text)}</td>`;
  // It holds nothing that takes the focus: where it is wider than the page, the keyboard scrolls it by itself.
  return html`<div class="scroll" tabindex="0" role="group" aria-label="Before and after"><table>
      <thead><tr><th scope="col">Half</th>${heads.map((h) => html`<th scope="col">${h}</th>`)}</tr></thead>
      <tbody>
        ${halves.map(
          ({ half, model, serial, firmware }) =>
            html`<tr><th scope="row" class="long">${terminal(half)}</th>${[model.before, model.after, serial.before, serial.after, firmware.before, firmware.found, firmware.after].map(cell)}</tr>`,
        )}
      </tbody>
    </table></div>
    <p class="second">Found: the first firmware that the new module reported.</p>`;
}

/** The steps with their times, durations, bounds and checks; each row tells its evidence. Those `near` what is pointed at are marked. */
export function stepsTable(
  swap: Swap,
  steps: readonly Step[],
  zone: string,
  near: Interval | null,
): TemplateResult {
  if (steps.length === 0) return html`<p>No step of the swap lies there.</p>`;
  const checks = new Map(swap.checks.map((c) => [c.id, c]));
  const row = (step: Step): TemplateResult => {
    const cite = citingAt(step.statement, step.evidence, step);
    return html`<tr class=${isNear(step, near) ? 'near' : ''} @mouseenter=${cite} @focusin=${cite} @mouseleave=${leaving} @focusout=${leaving}>
      <td class="clock">${sayInstantBounds(step, zone, swap.from)}</td>
      <td>${terminal(step.statement)} ${linesButton(step.statement, step.evidence)}</td>
      <td class="took">${step.duration === null ? '' : sayMeasure(step.duration)}</td>
      <td>${step.checks.map((id) => checkLink(checks.get(id)))}</td>
    </tr>`;
  };
  return html`<div class="scroll"><table class="steps">
    <thead><tr><th scope="col">Time</th><th scope="col">What happened</th><th scope="col">Duration, with bounds</th><th scope="col">Check</th></tr></thead>
    <tbody>${steps.map(row)}</tbody>
  </table></div>`;
}

function checkLink(check: Swap['checks'][number] | undefined): TemplateResult {
  if (check === undefined) return html``;
  return html`<div><button type="button" class=${`link ${check.status}`} @click=${() => goTo(`check-${check.id}`)}>${check.title}: ${statusWords[check.status]}</button></div>`;
}

/** All checks with result and reason: those that did not pass, and the others folded to their count. */
export function checksSection({ checks }: Swap): TemplateResult {
  const passed = checks.filter((c) => c.status === 'pass');
  const others = checks.filter((c) => c.status !== 'pass');
  return html`${others.length === 0 ? nothing : checksTable(others)}
    ${passed.length === 0 ? nothing : html`<details class="fold"><summary>${passed.length} of ${checks.length} checks pass. Show</summary>${checksTable(passed)}</details>`}`;
}

function checksTable(checks: Swap['checks']): TemplateResult {
  return html`<div class="scroll"><table class="checks">
    <thead><tr><th scope="col">Check</th><th scope="col">Result</th><th scope="col">Reason</th></tr></thead>
    <tbody>
      ${checks.map((c) => {
        const cite = citing(c.title, c.evidence);
        return html`<tr id=${`check-${c.id}`} @mouseenter=${cite} @focusin=${cite}>
          <th scope="row">${c.title}</th>
          <td class=${`outcome ${c.status}`}>${statusWords[c.status]}</td>
          <td>${terminal(c.statement)} ${linesButton(c.title, c.evidence)}</td>
        </tr>`;
      })}
    </tbody>
  </table></div>`;
}
