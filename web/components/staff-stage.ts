import { html, nothing, svg, type TemplateResult } from 'lit';
import type { Instant, Interval } from '../../src/vocabulary.ts';
import { axisWidth, besideIn, type StaffDrawing } from '../staff-drawing.ts';
import { pointerListeners, shareOf } from '../staff-gestures.ts';
import { type StaffAction, staffAction } from '../staff-keys.ts';
import { isSame, panned, wheelFactor, zoomed } from '../staff-window.ts';
import { PageElement } from './page-element.ts';
import './chart-figure.ts';

/** What a person did on the staff; instants in milliseconds UTC. */
export type StaffGesture =
  | { readonly kind: 'over'; readonly time: number | null }
  /** `isHeld` while a drag goes on. */
  | { readonly kind: 'window'; readonly window: Interval; readonly isHeld: boolean }
  | { readonly kind: 'mark'; readonly span: Interval; readonly last: boolean }
  | { readonly kind: 'press'; readonly time: number }
  | { readonly kind: 'key'; readonly action: StaffAction };

/** What is drawn over the staff. */
export interface StaffOver {
  readonly cursor: number | null;
  readonly marked: Interval | null;
  readonly at: Instant | null;
}

/** The picture of the staff with what can be done on it: it is pointed at, dragged, zoomed and read by keys. Fires `gesture`. */
export class StaffStage extends PageElement {
  static override properties = {
    drawing: { attribute: false },
    shown: { attribute: false },
    whole: { attribute: false },
    room: { attribute: false },
    over: { attribute: false },
    said: { attribute: false },
    marks: { attribute: false },
  };
  declare drawing: StaffDrawing;
  declare shown: Interval;
  declare whole: Interval;
  declare room: number;
  declare over: StaffOver;
  /** The read-out where the cursor is. */
  declare said: string;
  /** A drag marks a span, without Shift as well. */
  declare marks: boolean;
  private grabbed: Interval | null = null;

  override render(): TemplateResult {
    const { drawing, room, shown, whole, over } = this;
    const now = over.cursor ?? (shown.from + shown.to) / 2;
    const seconds = (time: number): number => Math.round((time - whole.from) / 1000);
    const { down, move, up, leave } = this.listeners;
    return html`<div class="stage">
      <chart-figure .spec=${drawing.spec} .label=${drawing.said}></chart-figure>
      <svg class="over" width=${room} aria-hidden="true">${this.overlay()}</svg>
      <svg class=${this.marks ? 'touch marks' : 'touch'} width=${room} tabindex="0" role="slider"
        aria-label="Instant on the staff"
        aria-valuemin="0" aria-valuemax=${seconds(whole.to)} aria-valuenow=${seconds(now)} aria-valuetext=${this.said}
        @keydown=${this.onKey} @wheel=${{ handleEvent: this.onWheel, passive: false }}>
        <rect class="ground" x=${besideIn(room).left} width=${axisWidth(room)} height="100%"
          @pointerdown=${down} @pointermove=${move} @pointerup=${up} @pointercancel=${up} @pointerleave=${leave}></rect>
      </svg>
    </div>`;
  }

  private overlay(): TemplateResult {
    const { shown, over, room } = this;
    const width = axisWidth(room);
    const x = (time: number): number => ((time - shown.from) / Math.max(1, shown.to - shown.from)) * width;
    const isIn = (time: number): boolean => time >= shown.from && time <= shown.to;
    const box = (name: string, from: number, to: number): TemplateResult =>
      svg`<rect class=${name} x=${x(from)} y="0" width=${Math.max(1, x(to) - x(from))} height="100%"></rect>`;
    const line = (name: string, time: number): TemplateResult =>
      svg`<line class=${name} x1=${x(time)} x2=${x(time)} y1="0" y2="100%"></line>`;
    const { marked, at, cursor } = over;
    return svg`<svg x=${besideIn(room).left} width=${width} height="100%">
      ${marked === null ? nothing : box('marked', marked.from, marked.to)}
      ${at === null || at.time === at.earliest ? nothing : box('at-bounds', at.earliest, at.time)}
      ${at === null || !isIn(at.time) ? nothing : line('at', at.time)}
      ${cursor === null || !isIn(cursor) ? nothing : line('cursor', cursor)}
    </svg>`;
  }

  private readonly listeners = pointerListeners({
    over: (at) => this.tell({ kind: 'over', time: at === null ? null : this.timeAt(at) }),
    isMarking: (event) => {
      this.grabbed = this.shown;
      this.querySelector<SVGElement>('.touch')?.focus({ preventScroll: true });
      return event.shiftKey || this.marks;
    },
    marked: (from, to, last) => {
      const [a, b] = [this.timeAt(Math.min(from, to)), this.timeAt(Math.max(from, to))];
      const span = {
        from: Math.floor(Math.max(a, this.shown.from)),
        to: Math.ceil(Math.min(b, this.shown.to)),
      };
      this.tell({ kind: 'mark', span, last });
    },
    dragged: (by, last) => {
      if (this.grabbed !== null) this.move(panned(this.grabbed, -by, this.whole), !last);
    },
    pressed: (at) => this.tell({ kind: 'press', time: this.timeAt(at) }),
  });

  private timeAt(share: number): number {
    const { from, to } = this.shown;
    return Math.round(from + Math.max(0, Math.min(1, share)) * (to - from));
  }

  /** A plain wheel zooms while the staff has the focus; where there is nothing left to zoom it scrolls the page, as elsewhere. */
  private onWheel = (event: WheelEvent): void => {
    const hasFocus = event.currentTarget === document.activeElement;
    if (!hasFocus && !event.ctrlKey && !event.shiftKey && !event.metaKey) return;
    const ground = this.querySelector('.ground');
    if (ground === null) return;
    const at = shareOf({ clientX: event.clientX, currentTarget: ground });
    const next = zoomed(this.shown, wheelFactor(event), Math.max(0, Math.min(1, at)), this.whole);
    if (isSame(next, this.shown) && !event.ctrlKey) return;
    event.preventDefault();
    this.move(next, false);
  };

  private onKey(event: KeyboardEvent): void {
    const action = staffAction(event, this.over.marked !== null);
    if (action === null) return;
    event.preventDefault();
    this.tell({ kind: 'key', action });
  }

  private move(window: Interval, isHeld: boolean): void {
    this.tell({ kind: 'window', window, isHeld });
  }

  private tell(detail: StaffGesture): void {
    this.dispatchEvent(new CustomEvent('gesture', { detail }));
  }
}

customElements.define('staff-stage', StaffStage);
