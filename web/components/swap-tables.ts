import { html, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { statusWords } from '../../src/report/status-words.ts';
import { sayInstantBounds, sayMeasure } from '../../src/report/words.ts';
import type { Interval, Step, Swap } from '../../src/vocabulary.ts';
import { citing, citingAt, isNear, leaving } from '../cite.ts';
import { linesButton } from './lines-button.ts';

/** Why the verdict is what it is: each check that does not hold, as a link to its row. */
export function reasonsList({ checks }: Swap): TemplateResult {
  const reasons = checks.filter((c) => c.status !== 'pass');
  if (reasons.length === 0) return html`<p>All ${checks.length} checks hold.</p>`;
  return html`<ul>
    ${reasons.map(
      (c) => html`<li>
        <button type="button" class=${`link ${c.status}`} @click=${() => goTo(`check-${c.id}`)} @focus=${citing(c.title, c.evidence)} @mouseenter=${citing(c.title, c.evidence)}>${c.title}: ${statusWords[c.status]}.</button>
        ${terminal(c.statement)}
      </li>`,
    )}
  </ul>`;
}

/** Moves sight and focus to an element of the page. */
function goTo(id: string): void {
  const row = document.getElementById(id);
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

/** All checks with their outcome and why. */
export function checksTable({ checks }: Swap): TemplateResult {
  return html`<div class="scroll"><table class="checks">
    <thead><tr><th scope="col">What must hold</th><th scope="col">Outcome</th><th scope="col">Why</th></tr></thead>
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
