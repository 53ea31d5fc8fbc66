import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { HalfAt, SourceLine } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import { linesButton } from './lines-button.ts';

/** Both halves as they are, a row each. */
export function halvesNow(halves: readonly HalfAt[]): TemplateResult | typeof nothing {
  if (halves.length === 0) return nothing;
  const cell = (text: string | null): TemplateResult =>
    html`<td class="long">${text === null ? 'not known' : terminal(text)}</td>`;
  return html`<div id="now-halves" class="scroll" tabindex="0" role="group" aria-label="Both halves"><table>
      <thead><tr>${['Half', 'Role', 'Light', 'Model', 'Serial', 'Firmware'].map((h) => html`<th scope="col">${h}</th>`)}</tr></thead>
      <tbody>${halves.map(
        ({ half, isOut, role, light, model, serial, firmware }) =>
          html`<tr><th scope="row" class="long">${terminal(half)}</th>${
            isOut
              ? html`<td colspan="5"><b>removed</b></td>`
              : [role, light, model, serial, firmware].map(cell)
          }</tr>`,
      )}</tbody>
    </table></div>`;
}

/** The last lines that changed something, as they were read. */
export function lastLines(lines: readonly SourceLine[]): TemplateResult | typeof nothing {
  if (lines.length === 0) return nothing;
  const title = 'The last lines';
  const cite = citing(title, lines);
  return html`<section id="now-lines" @mouseenter=${cite} @focusin=${cite}>
    <h2>Last lines</h2>
    <ol class="tail">${lines.map(
      ({ file, line, text }, index) =>
        html`<li class="tail-line"><code>${terminal(text)}</code> <span class="second">${terminal(file.split('/').at(-1) ?? '')}:${line}</span>${index < lines.length - 1 ? nothing : html` ${linesButton(title, lines)}`}</li>`,
    )}</ol>
  </section>`;
}
