import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { TopLevelSpec } from 'vega-lite';
import { staff as staffChart } from '../../src/charts/staff.ts';
import { reducedStaff, staffBetween } from '../../src/report/reduced-staff.ts';
import { staffLooks } from '../../src/report/staff-key.ts';
import { staffRows } from '../../src/report/staff-rows.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { Interval, Staff } from '../../src/vocabulary.ts';
import { withBrush } from '../with-brush.ts';
import { PageElement } from './page-element.ts';
import './chart-figure.ts';

/** Columns that the marks of the staff are reduced to before they are drawn. */
const columns = 660;
const nearestMs = 10_000;
/** What the names of the halves and a word at the right end take beside the lines. */
const besideUnits = 60;

interface Drawing {
  readonly spec: TopLevelSpec;
  readonly caption: string;
  /** Milliseconds that the chart's clock is ahead of UTC. */
  readonly ahead: number;
}

/**
 * The staff of a pair that can be moved closer to and marked. Fires `look` with the span that is marked, or else shown: what
 * stands beside it follows.
 */
export class StaffFigure extends PageElement {
  static override properties = {
    staff: { attribute: false },
    home: { attribute: false },
    zone: { attribute: false },
    shown: { state: true },
    marked: { state: true },
    room: { state: true },
  };
  declare staff: Staff;
  /** Where a swap was: the first thing to see; the whole staff where there is none. */
  declare home: Interval;
  declare zone: string;
  declare shown: Interval;
  declare marked: Interval | null;
  declare room: number;
  private drawing: Drawing | null = null;
  private drawnOf: readonly unknown[] = [];
  private readonly sizes = new ResizeObserver(() => {
    this.room = this.clientWidth;
  });

  constructor() {
    super();
    this.marked = null;
    this.room = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sizes.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('home')) {
      this.shown = this.home;
      this.marked = null;
    }
    // A new drawing only for another window: the mark that a person drags must not be drawn away.
    const of = [this.staff, this.shown, this.zone, this.room];
    if (of.every((part, index) => part === this.drawnOf[index])) return;
    this.drawnOf = of;
    this.drawing = this.room === 0 ? null : this.draw();
  }

  private draw(): Drawing {
    const { from, to } = this.shown;
    const rows = staffRows(reducedStaff(staffBetween(this.staff, from, to), columns), this.zone);
    const said = staffChart.describe(rows);
    return {
      spec: withBrush(staffChart.spec(rows), Math.max(280, this.room - besideUnits)),
      caption: `${sayInstant(from, this.zone)} to ${sayInstant(to, this.zone)}. ${said}`,
      ahead: (rows.find((r) => r.mark === 'name')?.x ?? from) - from,
    };
  }

  override render(): TemplateResult {
    const { drawing } = this;
    if (drawing === null) return html`<p class="second">The staff is being drawn.</p>`;
    return html`${this.controls()}
      <chart-figure
        .spec=${drawing.spec}
        .caption=${drawing.caption}
        .hasBrush=${true}
        @brush=${(event: Event) => this.onBrush(event, drawing.ahead)}
        @wheel=${this.onWheel}
      ></chart-figure>
      <ul class="key">${staffLooks.map(([look, meaning]) => html`<li><b>${look}</b> ${meaning}</li>`)}</ul>`;
  }

  private controls(): TemplateResult {
    const { staff, home, marked } = this;
    const isWhole = this.shown.from <= staff.from && this.shown.to >= staff.to;
    const button = (words: string, isOff: boolean, press: () => void): TemplateResult =>
      html`<button type="button" ?disabled=${isOff} @click=${press}>${words}</button>`;
    return html`<p class="choices" role="group" aria-label="What the staff shows">
      ${button('Closer', this.shown.to - this.shown.from <= nearestMs, () => this.scale(0.5, 0.5))}
      ${button('Wider', isWhole, () => this.scale(2, 0.5))}
      ${button('Earlier', this.shown.from <= staff.from, () => this.move(-0.5))}
      ${button('Later', this.shown.to >= staff.to, () => this.move(0.5))}
      ${button('This swap', this.shown === home, () => this.look(home))}
      ${button('Whole log', isWhole, () => this.look({ from: staff.from, to: staff.to }))}
      ${
        marked === null
          ? html`<span class="second">Drag over the staff to mark a span: the steps follow it.</span>`
          : html`${button('Closer to what is marked', false, () => this.look(marked))}
            <span class="second">Marked: ${sayInstant(marked.from, this.zone)} to ${sayInstant(marked.to, this.zone)}.</span>`
      }
      ${nothing}
    </p>`;
  }

  private onBrush(event: Event, ahead: number): void {
    const span: unknown = event instanceof CustomEvent ? event.detail : null;
    this.marked = isInterval(span) ? { from: span.from - ahead, to: span.to - ahead } : null;
    this.tell(this.marked ?? this.shown);
  }

  private onWheel(event: WheelEvent): void {
    if (!event.ctrlKey && !event.shiftKey) return;
    event.preventDefault();
    const box = this.querySelector('.picture')?.getBoundingClientRect();
    const at = box === undefined ? 0.5 : Math.min(1, Math.max(0, (event.clientX - box.left) / box.width));
    this.scale(event.deltaY < 0 ? 0.8 : 1.25, at);
  }

  /** `at` is the place that stays where it is, as a share of the width. */
  private scale(by: number, at: number): void {
    const { from, to } = this.shown;
    const length = Math.max(nearestMs, (to - from) * by);
    const begin = from + (to - from - length) * at;
    this.look({ from: begin, to: begin + length });
  }

  private move(by: number): void {
    const { from, to } = this.shown;
    const step = Math.max(this.staff.from - from, Math.min(this.staff.to - to, (to - from) * by));
    this.look({ from: from + step, to: to + step });
  }

  private look({ from, to }: Interval): void {
    const { staff, home } = this;
    const isHome = from === home.from && to === home.to;
    this.shown = isHome ? home : { from: Math.max(staff.from, from), to: Math.min(staff.to, to) };
    this.marked = null;
    this.tell(this.shown);
  }

  private tell(detail: Interval): void {
    this.dispatchEvent(new CustomEvent('look', { detail }));
  }
}

function isInterval(span: unknown): span is Interval {
  return typeof span === 'object' && span !== null && 'from' in span && 'to' in span;
}

customElements.define('staff-figure', StaffFigure);
