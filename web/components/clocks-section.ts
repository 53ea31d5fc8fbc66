import { html, nothing, type TemplateResult } from 'lit';
import type { SiteModel } from '../protocol.ts';
import { clockTable } from './clock-table.ts';

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
        : clockTable(offsets)
    }
    ${
      isBeyond
        ? html`<p><label><input type="checkbox" id="align" .checked=${isAligned} @change=${(event: Event) => event.target instanceof HTMLInputElement && align(event.target.checked)} />
          Set the clocks that disagree to that of the reference</label></p>`
        : nothing
    }
  </section>`;
}
