import { html, svg, type TemplateResult } from 'lit';
import { reducedStaff } from '../../src/report/reduced-staff.ts';
import { staffRows } from '../../src/report/staff-rows.ts';
import type { Staff } from '../../src/vocabulary.ts';
import { PageElement } from './page-element.ts';

const [width, height] = [240, 30];
const shown: ReadonlySet<string> = new Set(['active', 'ready', 'not-ready', 'unknown', 'tick', 'hatch']);

/** The staff of a pair in one row of the list, between the same two instants for all pairs. */
export class StaffStrip extends PageElement {
  static override properties = {
    staff: { attribute: false },
    from: { attribute: false },
    to: { attribute: false },
    zone: { attribute: false },
  };
  declare staff: Staff;
  declare from: number;
  declare to: number;
  declare zone: string;

  override render(): TemplateResult {
    const { staff, from, to } = this;
    const columns = Math.max(1, Math.round((width * (staff.to - staff.from)) / Math.max(1, to - from)));
    const rows = staffRows(reducedStaff(staff, columns), this.zone).filter((r) => shown.has(r.mark));
    const begin =
      staffRows(
        { ...staff, stretches: [], ticks: [], bringUps: [], lights: [], switchovers: [], unobserved: [] },
        this.zone,
      )[0]?.x ?? from;
    // Rows stand on the clock of the zone: so must the begin of the strip.
    const left = from + (begin - staff.from);
    const x = (time: number): number =>
      Math.round(((time - left) / Math.max(1, to - from)) * width * 10) / 10;
    const y = (at: number): number => height / 2 - (at - 0.5) * 14;
    return html`<svg class="strip" viewBox=${`0 0 ${width} ${height}`} width=${width} height=${height} aria-hidden="true">
      ${rows.map(
        (r) =>
          svg`<line class=${r.mark} x1=${x(r.x)} x2=${r.mark === 'tick' ? x(r.x2) : Math.max(x(r.x) + 1, x(r.x2))} y1=${y(r.y)} y2=${y(r.y2)}></line>`,
      )}
    </svg>`;
  }
}

customElements.define('staff-strip', StaffStrip);
