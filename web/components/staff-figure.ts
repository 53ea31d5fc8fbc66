import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Mark, PairHealth } from '../../src/pipeline.ts';
import { readOut, sayReadOut } from '../../src/report/staff-read-out.ts';
import type { Instant, Interval } from '../../src/vocabulary.ts';
import { cite, pin } from '../cite.ts';
import { axisWidth, drawStaff, drawStates, type RowsDrawing, type StaffDrawing } from '../staff-drawing.ts';
import type { StaffAction } from '../staff-keys.ts';
import { citedOf, marksIn, spanOf } from '../staff-marks.ts';
import { afterAction, type StaffPosition } from '../staff-moves.ts';
import { isSame, windowOf } from '../staff-window.ts';
import { PageElement } from './page-element.ts';
import { readOutLine, saySpan, staffControls, staffHelp } from './staff-controls.ts';
import type { StaffMove } from './staff-overview.ts';
import type { StaffGesture } from './staff-stage.ts';
import './chart-figure.ts';
import './staff-overview.ts';
import './staff-stage.ts';

/** How far from a mark a pointer may be, in pixels. */
const nearPixels = 8;
/** A staff that stands still for so long has come to rest: what follows it follows now. */
const restMs = 250;

/**
 * The staff of a pair as an instrument: read out, moved, zoomed, marked. Fires `look` with the span that is marked, or else
 * shown, once it has come to rest, and then, bubbling, `span` with what is shown, `null` where that is its home; `near`,
 * bubbling, with the time of what lies at the pointer or the cursor, `null` where nothing does.
 */
export class StaffFigure extends PageElement {
  static override properties = {
    health: { attribute: false },
    home: { attribute: false },
    zone: { attribute: false },
    span: { attribute: false },
    at: { attribute: false },
    position: { state: true },
    rested: { state: true },
    pointed: { state: true },
    marks: { state: true },
    room: { state: true },
  };
  declare health: PairHealth;
  /** Where a swap was: the first thing to see; the whole staff where there is none. */
  declare home: Interval;
  declare zone: string;
  /** What it is to show where that is not its home. */
  declare span: Interval | null;
  /** An instant that is looked at elsewhere. */
  declare at: Instant | null;
  declare position: StaffPosition;
  /** What was shown when it last came to rest. */
  declare rested: Interval;
  declare pointed: number | null;
  /** A drag marks a span. */
  declare marks: boolean;
  declare room: number;
  private drawing: StaffDrawing | null = null;
  private rows: RowsDrawing | null = null;
  private drawnOf: readonly unknown[] = [];
  private rowsOf: readonly unknown[] = [];
  /** What lies at the pointer now: while it moves on over the same marks there is nothing to tell. */
  private near: readonly Mark[] = [];
  /** The last span that it told of: the same one given back moves nothing. */
  private told: Interval | null = null;
  private resting: ReturnType<typeof setTimeout> | undefined;
  private readonly sizes = new ResizeObserver(() => {
    this.room = this.clientWidth;
  });

  constructor() {
    super();
    this.span = null;
    this.at = null;
    this.pointed = null;
    this.marks = false;
    this.room = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sizes.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
    clearTimeout(this.resting);
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('home') || (changed.has('span') && !isSameSpan(this.span, this.told))) this.comeHome();
    const { health, zone, room } = this;
    if (room === 0) return;
    const { shown } = this.position;
    const of = [health, shown, zone, room];
    if (isOther(of, this.drawnOf)) this.drawing = drawStaff(health, shown, zone, room);
    this.drawnOf = of;
    const rowsOf = [health, this.rested, zone, room];
    if (isOther(rowsOf, this.rowsOf)) this.rows = drawStates(health, this.rested, zone, room);
    this.rowsOf = rowsOf;
  }

  /** Shows what it was told to, at once. */
  private comeHome(): void {
    clearTimeout(this.resting);
    const { span, home, health } = this;
    const shown = span === null ? home : windowOf(span.from, span.to, health.staff);
    this.position = { shown, marked: null, cursor: null, anchor: null };
    this.rested = shown;
    this.told = span;
    this.near = [];
    if (span !== null) void this.updateComplete.then(() => this.look());
  }

  override render(): TemplateResult {
    const { drawing, rows, health, position, at, room, zone, home, marks } = this;
    if (drawing === null || rows === null) return html`<p class="second">The staff is being drawn.</p>`;
    const { shown, marked, cursor } = position;
    const { staff, spans } = health;
    const time = this.pointed ?? at?.time ?? cursor;
    const said = cursor === null ? saySpan(shown, zone) : sayReadOut(readOut(staff, spans, cursor, zone));
    return html`${staffControls({ shown, home, whole: staff, marked, marks, act: this.act, toggleMarks: this.toggleMarks })}
      ${readOutLine({
        read: time === null ? null : readOut(staff, spans, time, zone),
        shown: saySpan(shown, zone),
        marked: marked === null ? null : saySpan(marked, zone),
      })}
      <staff-stage .drawing=${drawing} .shown=${shown} .whole=${staff} .room=${room} .said=${said}
        .over=${{ cursor, marked, at }} .marks=${marks} @gesture=${this.onGesture} @focusout=${this.onLeave}></staff-stage>
      <staff-overview .staff=${staff} .zone=${zone} .shown=${shown} .room=${room} @move=${this.onMove}></staff-overview>
      ${rows.spec === null ? nothing : html`<chart-figure .spec=${rows.spec} .label=${rows.said}></chart-figure>`}
      ${rows.rest.length === 0 ? nothing : html`<p class="second rest">${rows.rest.join(' ')}</p>`}
      ${staffHelp(staff.limitSeconds)}`;
  }

  private readonly act = (action: StaffAction): void => {
    const { health, home, position } = this;
    if (action.kind === 'lines') this.pinAt(position.cursor);
    this.stand(afterAction(position, action, { whole: health.staff, home, marks: health.marks }));
    const { cursor } = this.position;
    if (action.kind === 'cursor' || action.kind === 'next-mark') this.lookAt(cursor);
    if (action.kind === 'let-go' && cursor === null) this.lookAt(null);
  };

  private readonly toggleMarks = (): void => {
    this.marks = !this.marks;
  };

  private onGesture(event: Event): void {
    if (!(event instanceof CustomEvent)) return;
    const gesture: StaffGesture = event.detail;
    switch (gesture.kind) {
      case 'over':
        this.pointed = gesture.time;
        this.lookAt(gesture.time);
        break;
      case 'window':
        this.stand({ ...this.position, shown: gesture.window }, gesture.isHeld);
        break;
      case 'mark':
        this.stand({ ...this.position, marked: gesture.span }, !gesture.last);
        if (gesture.last) this.citeMarks('What is marked', marksIn(this.health.marks, gesture.span));
        break;
      case 'press':
        this.stand({ ...this.position, cursor: gesture.time, anchor: null });
        this.pinAt(gesture.time);
        break;
      case 'key':
        this.act(gesture.action);
        break;
    }
  }

  private onMove(event: Event): void {
    if (!(event instanceof CustomEvent)) return;
    const { window, isHeld }: StaffMove = event.detail;
    this.stand({ ...this.position, shown: window }, isHeld);
  }

  private onLeave(): void {
    this.lookAt(null);
  }

  /** Stands elsewhere, and tells of it once it has come to rest: not while a drag holds it. */
  private stand(position: StaffPosition, isHeld = false): void {
    this.position = position;
    clearTimeout(this.resting);
    if (isHeld) return;
    this.resting = setTimeout(() => this.rest(), restMs);
  }

  private rest(): void {
    const { shown } = this.position;
    this.rested = shown;
    this.look();
    const span = isSame(shown, this.home) ? null : shown;
    if (isSameSpan(span, this.told)) return;
    this.told = span;
    this.dispatchEvent(new CustomEvent('span', { bubbles: true, detail: span }));
  }

  private look(): void {
    const { marked, shown } = this.position;
    this.dispatchEvent(new CustomEvent('look', { detail: marked ?? shown }));
  }

  /** Tells what lies at an instant: its rows are marked, its lines cited. */
  private lookAt(time: number | null): void {
    const { position, health } = this;
    const inside = time === null ? [] : marksIn(health.marks, this.about(time));
    if (!isOther(inside, this.near)) return;
    this.near = inside;
    this.dispatchEvent(new CustomEvent('near', { bubbles: true, detail: spanOf(inside) }));
    // What is marked keeps its evidence until the mark is taken away.
    if (inside.length > 0 && position.marked === null) this.citeMarks('What happened there', inside);
  }

  private about(time: number): Interval {
    const { from, to } = this.position.shown;
    const reach = ((to - from) / axisWidth(this.room)) * nearPixels;
    return { from: time - reach, to: time + reach };
  }

  private citeMarks(title: string, marks: readonly Mark[]): void {
    if (marks.length === 0) return;
    const cited = citedOf(title, marks);
    cite(this, cited.title, cited.lines);
  }

  private pinAt(time: number | null): void {
    const inside = time === null ? [] : marksIn(this.health.marks, this.about(time));
    if (inside.length > 0) pin(this, { ...citedOf('What happened there', inside), isByKey: false });
  }
}

function isSameSpan(a: Interval | null, b: Interval | null): boolean {
  return a === b || (a !== null && b !== null && isSame(a, b));
}

function isOther(now: readonly unknown[], before: readonly unknown[]): boolean {
  return now.length !== before.length || now.some((part, index) => part !== before[index]);
}

customElements.define('staff-figure', StaffFigure);
