import { html, nothing, type TemplateResult } from 'lit';
import { staffLooks } from '../../src/report/staff-key.ts';
import type { ReadOut } from '../../src/report/staff-read-out.ts';
import { sayInstant, sayInstantBounds } from '../../src/report/words.ts';
import { type Interval, sayDuration } from '../../src/vocabulary.ts';
import { type StaffAction, staffKeys } from '../staff-keys.ts';
import { isSame, nearestMs } from '../staff-window.ts';

/** What the buttons over the staff are about. */
export interface StaffControls {
  readonly shown: Interval;
  readonly home: Interval;
  readonly whole: Interval;
  readonly marked: Interval | null;
  /** A drag marks a span. */
  readonly marks: boolean;
  act(action: StaffAction): void;
  toggleMarks(): void;
}

/** The buttons over the staff. */
export function staffControls(controls: StaffControls): TemplateResult {
  const { shown, home, whole, marked, marks, act } = controls;
  const isWhole = shown.from <= whole.from && shown.to >= whole.to;
  const isSwap = home.from > whole.from || home.to < whole.to;
  const button = (words: string, isOff: boolean, action: StaffAction): TemplateResult =>
    html`<button type="button" ?disabled=${isOff} @click=${() => act(action)}>${words}</button>`;
  return html`<p class="choices" role="group" aria-label="What the staff shows">
    ${button('Zoom in', shown.to - shown.from <= nearestMs, { kind: 'zoom', by: 0.5 })}
    ${button('Zoom out', isWhole, { kind: 'zoom', by: 2 })}
    ${button('Back', shown.from <= whole.from, { kind: 'pan', by: -0.5 })}
    ${button('Forward', shown.to >= whole.to, { kind: 'pan', by: 0.5 })}
    ${isSwap ? button('Fit swap', isSame(shown, home), { kind: 'fit-swap' }) : nothing}
    ${button('Fit log', isWhole, { kind: 'fit-log' })}
    <button type="button" aria-pressed=${marks} @click=${controls.toggleMarks}>Mark a span</button>
    ${button('Zoom to span', marked === null, { kind: 'fit-span' })}
  </p>`;
}

/** `14 Mar 2026 08:59:05 to 10:21:21, 1 h 22 min`. */
export function saySpan({ from, to }: Interval, zone: string): string {
  return `${sayInstant(from, zone)} to ${sayInstantBounds({ time: to, earliest: to }, zone, from)}, ${sayDuration((to - from) / 1000)}`;
}

/** What is read over the staff. */
export interface StaffSaid {
  /** Of the instant that is looked at. */
  readonly read: ReadOut | null;
  readonly shown: string;
  readonly marked: string | null;
}

/** The line over the staff: what it says of the instant that is looked at, else what it shows and how it is moved. */
export function readOutLine({ read, shown, marked }: StaffSaid): TemplateResult {
  const last = marked === null ? nothing : html`<span>Marked: ${marked}.</span>`;
  if (read !== null) {
    const words = [...read.halves, ...read.pair].map((said) => html`<span>${said}</span>`);
    return html`<p class="read-out"><b>${read.time}</b>${words}${last}</p>`;
  }
  const how = html`<span class="second">Drag pans, Ctrl+wheel zooms, Shift+drag marks a span.</span>`;
  return html`<p class="read-out"><span>${shown}.</span>${marked === null ? how : last}</p>`;
}

/** What the staff's lines mean, and its keys. `limitSeconds` is where the flag of a bring-up stands. */
export function staffHelp(limitSeconds: number): TemplateResult {
  return html`<details class="staff-key"><summary>How to read and move the staff</summary>
    <ul class="key">${staffLooks(limitSeconds).map(([look, meaning]) => html`<li><b>${look}</b> ${meaning}</li>`)}</ul>
    <dl class="key">${staffKeys.map(({ keys, meaning }) => html`<dt>${keys}</dt><dd>${meaning}</dd>`)}</dl>
  </details>`;
}
