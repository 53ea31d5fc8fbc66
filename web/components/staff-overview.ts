import { html, svg, type TemplateResult } from 'lit';
import type { StaffRow } from '../../src/charts/staff.ts';
import { reducedStaff } from '../../src/report/reduced-staff.ts';
import { clockAhead, staffRows } from '../../src/report/staff-rows.ts';
import type { Interval, Staff } from '../../src/vocabulary.ts';
import { axisWidth, besideIn } from '../staff-drawing.ts';
import { pointerListeners, shareOf } from '../staff-gestures.ts';
import { panned, windowOf } from '../staff-window.ts';
import { PageElement } from './page-element.ts';

const height = 30;
/** The window can be taken hold of where it would be too narrow to hit. */
const leastHold = 8;
const drawn: ReadonlySet<StaffRow['mark']> = new Set([
  'active',
  'ready',
  'not-ready',
  'unknown',
  'hatch',
  'critical',
  'warning',
]);

/** Where the window was dragged to. */
export interface StaffMove {
  readonly window: Interval;
  readonly isHeld: boolean;
}

/** The whole log small, with a window on what the staff shows. Fires `move` with the window that it is dragged to, and whether it is still held. */
export class StaffOverview extends PageElement {
  static override properties = {
    staff: { attribute: false },
    zone: { attribute: false },
    shown: { attribute: false },
    room: { attribute: false },
  };
  declare staff: Staff;
  declare zone: string;
  declare shown: Interval;
  declare room: number;
  private grabbed: Interval | null = null;
  private lines: TemplateResult[] = [];
  private linesOf: readonly unknown[] = [];

  override render(): TemplateResult {
    const { staff, room, shown } = this;
    const { left } = besideIn(room);
    const width = axisWidth(room);
    const x = (time: number): number => ((time - staff.from) / Math.max(1, staff.to - staff.from)) * width;
    const wide = Math.max(2, x(shown.to) - x(shown.from));
    const { down, move, up } = this.listeners;
    return html`<svg class="strip overview" width=${room} height=${height} aria-hidden="true">
        <text x=${left - 6} y=${height / 2 + 4} text-anchor="end">Log</text>
        <svg x=${left} width=${width} height=${height}>
          ${this.strokes(width)}
          <rect class="window" x=${Math.min(width - wide, x(shown.from))} y="1" width=${wide} height=${height - 2}></rect>
        </svg>
        <rect class="hold" x=${left} y="0" width=${width} height=${height}
          @pointerdown=${down} @pointermove=${move} @pointerup=${up} @pointercancel=${up}></rect>
      </svg>`;
  }

  /** The strokes stay the same however the window moves. */
  private strokes(width: number): readonly TemplateResult[] {
    const of = [this.staff, this.zone, width];
    if (of.every((part, index) => part === this.linesOf[index])) return this.lines;
    this.linesOf = of;
    const { staff, zone } = this;
    const begin = staff.from + clockAhead(staff.from, zone);
    const perUnit = Math.max(1, staff.to - staff.from) / width;
    const x = (time: number): number => Math.round(((time - begin) / perUnit) * 10) / 10;
    const y = ({ mark }: StaffRow, at: number): number =>
      mark === 'critical' || mark === 'warning' ? height - 4 : height / 2 - 2 - (at - 0.5) * 12;
    this.lines = staffRows(reducedStaff(staff, width), zone, { width, right: 0 })
      .filter((r) => drawn.has(r.mark))
      .map(
        (r) => svg`<line class=${r.mark} x1=${x(r.x)} x2=${x(r.x2)} y1=${y(r, r.y)} y2=${y(r, r.y2)}></line>`,
      );
    return this.lines;
  }

  private readonly listeners = pointerListeners({
    over: () => undefined,
    // A drag that begins beside the window marks another one.
    isMarking: (event) => {
      const { staff, shown, room } = this;
      const length = staff.to - staff.from;
      const at = staff.from + shareOf(event) * length;
      const hold = (length / axisWidth(room)) * leastHold;
      this.grabbed = shown;
      return at < shown.from - hold || at > shown.to + hold || shown.to - shown.from >= length;
    },
    marked: (from, to, last) => this.move(windowOf(this.timeAt(from), this.timeAt(to), this.staff), !last),
    dragged: (by, last) => {
      const { grabbed, staff } = this;
      if (grabbed === null) return;
      const moved = (by * (staff.to - staff.from)) / (grabbed.to - grabbed.from);
      this.move(panned(grabbed, moved, staff), !last);
    },
    pressed: (at) => {
      const { shown, staff } = this;
      const middle = (shown.from + shown.to) / 2;
      this.move(panned(shown, (this.timeAt(at) - middle) / Math.max(1, shown.to - shown.from), staff), false);
    },
  });

  private timeAt(share: number): number {
    return this.staff.from + share * (this.staff.to - this.staff.from);
  }

  private move(window: Interval, isHeld: boolean): void {
    const detail: StaffMove = { window, isHeld };
    this.dispatchEvent(new CustomEvent('move', { detail }));
  }
}

customElements.define('staff-overview', StaffOverview);
