import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { TopLevelSpec } from 'vega-lite';
import { staff as staffChart } from '../../src/charts/staff.ts';
import { stateRows } from '../../src/charts/state-rows.ts';
import type { Mark, PairHealth } from '../../src/pipeline.ts';
import { reducedStaff, staffBetween } from '../../src/report/reduced-staff.ts';
import { staffLooks } from '../../src/report/staff-key.ts';
import { staffRows } from '../../src/report/staff-rows.ts';
import { stateRowRows } from '../../src/report/state-spans.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { Interval } from '../../src/vocabulary.ts';
import { type Cited, cite, pin } from '../cite.ts';
import { inLine, shareAlong, withBrush } from '../with-brush.ts';
import { PageElement } from './page-element.ts';
import './chart-figure.ts';

/** Columns that the marks of the staff are reduced to before they are drawn. */
const columns = 660;
const nearestMs = 10_000;
/** How far from a mark a pointer may be, in columns. */
const nearColumns = 8;
const mostCited = 12;
/** A pointer that moves further between press and release drags. */
const mostDrift = 3;

interface Drawing {
  readonly staff: TopLevelSpec;
  readonly said: string;
  readonly rows: TopLevelSpec | null;
  readonly rowsSaid: string;
  /** Milliseconds that the chart's clock is ahead of UTC. */
  readonly ahead: number;
}

/**
 * The staff of a pair that can be moved closer to and marked. Fires `look` with the span that is marked, or else shown: what
 * stands beside it follows.
 */
export class StaffFigure extends PageElement {
  static override properties = {
    health: { attribute: false },
    home: { attribute: false },
    zone: { attribute: false },
    shown: { state: true },
    marked: { state: true },
    room: { state: true },
  };
  declare health: PairHealth;
  /** Where a swap was: the first thing to see; the whole staff where there is none. */
  declare home: Interval;
  declare zone: string;
  declare shown: Interval;
  declare marked: Interval | null;
  declare room: number;
  private drawing: Drawing | null = null;
  /** What is cited now, so that a pointer that moves on over the same marks asks for nothing. */
  private citedFirst: Mark | null = null;
  private citedCount = 0;
  private pressedAt = 0;
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
    const of = [this.health, this.shown, this.zone, this.room];
    if (of.every((part, index) => part === this.drawnOf[index])) return;
    this.drawnOf = of;
    this.drawing = this.room === 0 ? null : this.draw();
  }

  private draw(): Drawing {
    const { from, to } = this.shown;
    const rows = staffRows(reducedStaff(staffBetween(this.health.staff, from, to), columns), this.zone);
    // Rows stand on the clock of the zone: the names of the halves are where it begins.
    const ahead = (rows.find((r) => r.mark === 'name')?.x ?? from) - from;
    const states = stateRowRows(this.health.spans, this.shown, ahead);
    return {
      staff: inLine(withBrush(staffChart.spec(rows)), this.room, 24),
      said: staffChart.describe(rows),
      rows: states.length === 0 ? null : inLine(stateRows.spec(states), this.room, 4),
      rowsSaid: stateRows.describe(states),
      ahead,
    };
  }

  override render(): TemplateResult {
    const { drawing, shown, zone } = this;
    if (drawing === null) return html`<p class="second">The staff is being drawn.</p>`;
    return html`${this.controls()}
      <chart-figure
        .spec=${drawing.staff}
        .label=${drawing.said}
        .caption=${`${sayInstant(shown.from, zone)} to ${sayInstant(shown.to, zone)}.`}
        .hasBrush=${true}
        @brush=${(event: Event) => this.onBrush(event, drawing.ahead)}
        @mousemove=${this.onPoint}
        @pointerdown=${this.onPress}
        @click=${this.onClick}
        @mouseleave=${this.onLeave}
        @wheel=${this.onWheel}
      ></chart-figure>
      ${drawing.rows === null ? nothing : html`<chart-figure .spec=${drawing.rows} .label=${drawing.rowsSaid}></chart-figure>`}
      <ul class="key">${staffLooks(this.health.staff.limitSeconds).map(([look, meaning]) => html`<li><b>${look}</b> ${meaning}</li>`)}</ul>`;
  }

  private controls(): TemplateResult {
    const { home, marked } = this;
    const { staff } = this.health;
    const isWhole = this.shown.from <= staff.from && this.shown.to >= staff.to;
    const isAll = home.from <= staff.from && home.to >= staff.to;
    const button = (words: string, isOff: boolean, press: () => void): TemplateResult =>
      html`<button type="button" ?disabled=${isOff} @click=${press}>${words}</button>`;
    return html`<p class="choices" role="group" aria-label="What the staff shows">
      ${button('Closer', this.shown.to - this.shown.from <= nearestMs, () => this.scale(0.5, 0.5))}
      ${button('Wider', isWhole, () => this.scale(2, 0.5))}
      ${button('Earlier', this.shown.from <= staff.from, () => this.move(-0.5))}
      ${button('Later', this.shown.to >= staff.to, () => this.move(0.5))}
      ${isAll ? nothing : button('This swap', this.shown === home, () => this.look(home))}
      ${button('Whole log', isWhole, () => this.look({ from: staff.from, to: staff.to }))}
      ${
        marked === null
          ? html`<span class="second">Drag over the staff to mark a span: the steps follow it.</span>`
          : html`${button('Closer to what is marked', false, () => this.look(marked))}
            <span class="second">Marked: ${sayInstant(marked.from, this.zone)} to ${sayInstant(marked.to, this.zone)}.</span>`
      }
    </p>`;
  }

  private onBrush(event: Event, ahead: number): void {
    const span: unknown = event instanceof CustomEvent ? event.detail : null;
    this.marked = isInterval(span) ? wholeMs(span.from - ahead, span.to - ahead) : null;
    this.tell(this.marked ?? this.shown);
    if (this.marked !== null) this.citeMarks('What is marked', this.marked);
  }

  /** The lines behind the marks nearest to the pointer. */
  private onPoint(event: MouseEvent): void {
    const near = this.spanAt(event);
    // What is marked keeps its evidence until the mark is taken away.
    if (near !== null && event.buttons === 0 && this.marked === null)
      this.citeMarks('What happened there', near);
  }

  private onPress({ clientX }: MouseEvent): void {
    this.pressedAt = clientX;
  }

  /** A press pins what happened there; a drag marks a span. */
  private onClick(event: MouseEvent): void {
    const near = this.spanAt(event);
    if (near === null || Math.abs(event.clientX - this.pressedAt) > mostDrift) return;
    const marks = this.marksIn(near);
    if (marks.length > 0) pin(this, { ...citedOf('What happened there', marks), isByKey: false });
  }

  private onLeave(): void {
    this.citedFirst = null;
  }

  /** The time about the pointer; `null` beside the time axis. */
  private spanAt(event: MouseEvent): Interval | null {
    const share = this.shareOf(event);
    if (share === null) return null;
    const length = this.shown.to - this.shown.from;
    const at = this.shown.from + share * length;
    const reach = (length / columns) * nearColumns;
    return { from: at - reach, to: at + reach };
  }

  private marksIn({ from, to }: Interval): readonly Mark[] {
    return this.health.marks.filter((m) => m.time >= from && m.earliest <= to);
  }

  /** Where on the time axis the pointer is; `null` beside it. */
  private shareOf({ clientX }: MouseEvent): number | null {
    const picture = this.querySelector('.picture svg');
    const share = picture === null ? -1 : shareAlong(picture, clientX);
    return share < 0 || share > 1 ? null : share;
  }

  private citeMarks(title: string, span: Interval): void {
    const inside = this.marksIn(span);
    const first = inside[0];
    const isSame = first === this.citedFirst && inside.length === this.citedCount;
    if (first === undefined || isSame) return;
    this.citedFirst = first;
    this.citedCount = inside.length;
    const cited = citedOf(title, inside);
    cite(this, cited.title, cited.lines);
  }

  private onWheel(event: WheelEvent): void {
    if (!event.ctrlKey && !event.shiftKey) return;
    event.preventDefault();
    this.scale(event.deltaY < 0 ? 0.8 : 1.25, this.shareOf(event) ?? 0.5);
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
    const { staff } = this.health;
    const step = Math.max(staff.from - from, Math.min(staff.to - to, (to - from) * by));
    this.look({ from: from + step, to: to + step });
  }

  private look({ from, to }: Interval): void {
    const { home } = this;
    const { staff } = this.health;
    const isHome = from === home.from && to === home.to;
    this.shown = isHome ? home : wholeMs(Math.max(staff.from, from), Math.min(staff.to, to));
    this.marked = null;
    this.tell(this.shown);
  }

  private tell(detail: Interval): void {
    this.dispatchEvent(new CustomEvent('look', { detail }));
  }
}

function citedOf(title: string, marks: readonly Mark[]): Cited {
  const words = marks.slice(0, mostCited).map(sayMark).join(', ');
  const more = marks.length > mostCited ? `, and ${marks.length - mostCited} more` : '';
  return { title: `${title}: ${words}${more}`, lines: marks.flatMap((m) => m.evidence) };
}

function sayMark({ half, what }: Mark): string {
  return half === null ? what : `${half} ${what}`;
}

/** An instant is a whole number of milliseconds; a place on the staff need not be. */
function wholeMs(from: number, to: number): Interval {
  return { from: Math.floor(from), to: Math.ceil(to) };
}

function isInterval(span: unknown): span is Interval {
  return typeof span === 'object' && span !== null && 'from' in span && 'to' in span;
}

customElements.define('staff-figure', StaffFigure);
