import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayDuration } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import type { SiteModel } from '../protocol.ts';
import { linesButton } from './lines-button.ts';

/** How far the clocks of the files are apart, the switch that sets them right. */
export function clocksSection(
  { offsets, isAligned }: SiteModel,
  align: (isAligned: boolean) => void,
): TemplateResult {
  const isBeyond = offsets.some((o) => o.isBeyond);
  return html`<section id="clocks">
    <h2>Clocks</h2>
    ${
      offsets.length === 0
        ? html`<p>No two files saw the same changes, so nothing says how far their clocks are apart.</p>`
        : html`<div class="scroll"><table>
          <thead><tr><th scope="col">File</th><th scope="col">Its clock, against the reference</th><th scope="col" class="number">Spread</th><th scope="col" class="number">Changes both saw</th></tr></thead>
          <tbody>${offsets.map(row)}</tbody>
        </table></div>`
    }
    ${
      isBeyond
        ? html`<p><label><input type="checkbox" id="align" .checked=${isAligned} @change=${(event: Event) => event.target instanceof HTMLInputElement && align(event.target.checked)} />
          Set the clocks that disagree to that of the reference</label></p>`
        : nothing
    }
  </section>`;
}

function row({
  file,
  reference,
  ahead,
  spread,
  count,
  isBeyond,
  evidence,
}: SiteModel['offsets'][number]): TemplateResult {
  const clock = `The clock of ${file}`;
  const cite = citing(clock, evidence);
  const what = sayOffset(ahead, isBeyond, terminal(reference));
  return html`<tr @mouseenter=${cite} @focusin=${cite}>
    <th scope="row" class="long">${terminal(file)}</th>
    <td class=${isBeyond ? 'inconclusive long' : 'long'}>${what} ${linesButton(clock, evidence)}</td>
    <td class="number">${ahead === null ? '' : sayDuration(spread / 1000)}</td>
    <td class="number">${count}</td>
  </tr>`;
}

function sayOffset(ahead: number | null, isBeyond: boolean, reference: string): string {
  if (ahead === null) return `not measured against ${reference}: too few changes can be told to be in both`;
  const by = sayDuration(Math.abs(ahead) / 1000);
  return isBeyond
    ? `${by} ${ahead > 0 ? 'ahead of' : 'behind'} ${reference}`
    : `agrees with ${reference}, ${by} apart`;
}
