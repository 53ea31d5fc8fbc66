import { html, svg, type TemplateResult } from 'lit';
import { reducedStaff } from '../../src/report/reduced-staff.ts';
import { staffRows } from '../../src/report/staff-rows.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { Staff } from '../../src/vocabulary.ts';
import { nextTask } from '../next-task.ts';
import { PageElement } from './page-element.ts';

const [width, height] = [240, 30];
const shown: ReadonlySet<string> = new Set(['active', 'ready', 'not-ready', 'unknown', 'tick', 'hatch']);

/** The staff of a pair as a row of the list, over the time that its own log covers. */
export class StaffStrip extends PageElement {
  static override properties = { staff: { attribute: false }, zone: { attribute: false } };
  declare staff: Staff;
  declare zone: string;

  /** Each in a task of its own: a list has a hundred of them. */
  protected override async scheduleUpdate(): Promise<void> {
    await nextTask();
    super.scheduleUpdate();
  }

  override render(): TemplateResult {
    const { staff, zone } = this;
    const rows = staffRows(reducedStaff(staff, width), zone);
    // Rows stand on the clock of the zone: so does the begin of the strip, where the names of the halves are.
    const left = rows.find((r) => r.mark === 'name')?.x ?? staff.from;
    const perUnit = Math.max(1, staff.to - staff.from) / width;
    const x = (time: number): number => Math.round(((time - left) / perUnit) * 10) / 10;
    const y = (at: number): number => height / 2 - (at - 0.5) * 14;
    const line = (r: (typeof rows)[number]): TemplateResult =>
      svg`<line class=${r.mark} x1=${x(r.x)} x2=${x(r.x2)} y1=${y(r.y)} y2=${y(r.y2)}></line>`;
    return html`<svg class="strip" viewBox=${`0 0 ${width} ${height}`} width=${width} height=${height} aria-hidden="true">
        ${rows.filter((r) => shown.has(r.mark)).map(line)}
      </svg>
      <span class="second">${sayInstant(staff.from, zone)} to ${untilWords(staff, zone)}</span>`;
  }
}

/** The end of a span; without the day if that is the day it began on. */
function untilWords({ from, to }: Staff, zone: string): string {
  const [begin, end] = [sayInstant(from, zone), sayInstant(to, zone)];
  const clock = end.lastIndexOf(' ') + 1;
  return begin.slice(0, clock) === end.slice(0, clock) ? end.slice(clock) : end;
}

customElements.define('staff-strip', StaffStrip);
